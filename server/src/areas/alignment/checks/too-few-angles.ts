import { check, published } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import { atRead, readInto } from '../at-read.ts'
import { correctionOf } from '../plans/correction.ts'
import { replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/too-few-angles',
  severity: 'error',
  title: 'Too few places read round the flange',
  why: 'A plane needs three points that are not all on one side. With fewer, the tilt of the flange is not known.',
  source: published('plane through three points'),
  on: 'reading',
  plan: 'waits',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ half a turn
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: 0 deg 1.80 mm, 120 deg 1.80 mm, 240 deg 1.80 mm
  }
}`,
  run: (_facts, lookup) => {
    const outcome = correctionOf(lookup.block, lookup)
    if (outcome.ok || (outcome.fault.type !== 'too-few-angles' && outcome.fault.type !== 'within-half-turn'))
      return []
    return [
      atRead(lookup, readInto(lookup, 'gaps', 'face-dial', 'rim-dial'), {
        ...firstLine(outcome.fault.words),
        todo: 'Read the gap at top, starboard, bottom and port.',
      }),
    ]
  },
})
