import { check, published } from '../../../checks/check.ts'
import { correction } from '../at-read.ts'
import { nextReading } from '../fixes.ts'
import { undecided } from '../gaps-and-offsets.ts'
import { replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/gap-variation-undecided',
  severity: 'warning',
  title: 'Gap variation too near its limit for this gauge',
  why: 'A reading is only as good as the step of its gauge. If the limit is inside the uncertainty, neither within nor outside can be shown.',
  source: published('decision rule: ISO 14253-1'),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.85 mm, starboard 1.80 mm, bottom 1.75 mm, port 1.80 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ cannot decide
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: (_facts, lookup) => {
    const c = correction(lookup)
    return c ? undecided(lookup, c, 'gap variation', { judged: c.gapVariation, by: c.readBy.face }) : []
  },
  fixes: ({ check: id }, ground) => nextReading(ground, id),
})
