import { fileCheck, theLanguage } from '../../../checks/check.ts'
import { type Block, childrenOf, factOf, ofKind } from '../../../job/model.ts'

const job = (taken: string) => `drive main {
  reading dry-1 {
    taken: ${taken}
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
}`

/** The day that a block says it was, and what that day is of. */
function dayOf(block: Block) {
  if (block.kind === 'job') return { day: factOf(block, 'job.launched'), what: 'launch' }
  return block.kind === 'reading'
    ? { day: factOf(block, 'reading.taken'), what: 'reading' }
    : { day: factOf(block, 'move.done'), what: 'move' }
}

export default fileCheck({
  id: 'alignment/dated-in-future',
  severity: 'error',
  title: 'Launch, reading or move dated after today',
  why: 'The dates put the log in order. With a wrong date the wrong reading may count as the last.',
  source: theLanguage,
  fires: job('9999-03-04').replace('    gauge:', '#          ^^^^^^^^^^ after today\n    gauge:'),
  quiet: job('2020-03-04'),
  file: ({ blocks, today }) => {
    const log = ofKind(blocks, 'drive').flatMap((drive) => [
      ...childrenOf(drive, 'reading'),
      ...childrenOf(drive, 'move'),
    ])
    return [...ofKind(blocks, 'job'), ...log].flatMap((block) => {
      const { day, what } = dayOf(block)
      if (!day || day.value.slice(0, 10) <= today) return []
      return [
        {
          at: day.at,
          message: `The ${what} is dated ${day.value.slice(0, 10)}, which is after today.`,
          todo: 'Correct the date. If it is right, check the date of this computer.',
          found: day.value.slice(0, 10),
          limit: `at most ${today}`,
        },
      ]
    })
  },
})
