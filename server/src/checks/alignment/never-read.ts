import { childrenOf } from '../../job/model.ts'
import { isAsBuilt } from '../as-built.ts'
import { atHead, check, commonPractice } from '../check.ts'

const job = (reading: string) => `job "Launch" {
  vessel: "Launch 07"
  status: as-built
}
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${reading}}`

export default check({
  id: 'alignment/never-read',
  severity: 'error',
  title: 'As built without a reading',
  why: 'A job that is as-built says how the machine was left. Without a reading of the coupling nothing shows that it is aligned.',
  source: commonPractice('common practice, no source'),
  on: 'drive',
  fires: job('').replace('drive main {', 'drive main {\n#<- no reading'),
  quiet: job(`  reading afloat-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    afloat: yes
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
`),
  run: (_facts, context) => {
    const { block, near } = context
    return isAsBuilt(context) && near('coupling') && near('bed') && childrenOf(block, 'reading').length === 0
      ? [
          atHead(block, {
            message: `The job is as-built, and the drive ${block.name ?? ''} has no reading of the coupling.`,
            todo: 'Read the coupling afloat, settled, with fuel and ballast aboard, and add the reading. Until then set the status back to issued.',
          }),
        ]
      : []
  },
})
