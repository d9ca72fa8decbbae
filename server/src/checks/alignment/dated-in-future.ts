import { type Block, childrenOf, factOf, ofKind } from '../../job/model.ts'
import { fileCheck, theLanguage } from '../check.ts'

const job = (taken: string) => `drive main {
  reading dry-1 {
    taken: ${taken}
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
}`

/** The day of a reading or a move, where one is said. */
const dayOf = (block: Block) =>
  block.kind === 'reading' ? factOf(block, 'reading.taken') : factOf(block, 'move.done')

export default fileCheck({
  id: 'alignment/dated-in-future',
  severity: 'warning',
  title: 'Reading or move dated after today',
  why: 'The log is put in order by its dates: one that is wrong puts a reading in the wrong place, and the wrong reading may count as the last. In a job that is as-built this is an error.',
  source: theLanguage,
  fires: job('9999-03-04').replace('    gauge:', '#          ^^^^^^^^^^ after today\n    gauge:'),
  quiet: job('2020-03-04'),
  file: ({ blocks, today }) => {
    const [about] = ofKind(blocks, 'job')
    const asBuilt = about && factOf(about, 'job.status')?.value === 'as-built'
    return ofKind(blocks, 'drive')
      .flatMap((drive) => [...childrenOf(drive, 'reading'), ...childrenOf(drive, 'move')])
      .flatMap((block) => {
        const day = dayOf(block)
        if (!day || day.value.slice(0, 10) <= today) return []
        const what = block.kind === 'reading' ? 'reading is said to be taken' : 'move is said to be done'
        return [
          {
            at: day.at,
            ...(asBuilt && { severity: 'error' as const }),
            message: `The ${what} on ${day.value.slice(0, 10)}, which is after today.`,
            todo: 'Correct the date. If it is right, check the date of this computer.',
            found: day.value.slice(0, 10),
            limit: `at most ${today}`,
          },
        ]
      })
  },
})
