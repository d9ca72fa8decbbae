import { check, published } from '../../../checks/check.ts'
import { correction } from '../at-read.ts'
import { nextReading } from '../fixes.ts'
import { doNotClose } from '../gaps-and-offsets.ts'
import { replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/offsets-do-not-close',
  severity: 'warning',
  title: 'Offsets that contradict each other',
  why: 'On round rims, top plus bottom equals port plus starboard, wherever the axes are. If not, a value was misread, or a rim is not round.',
  source: published(
    'Bloch & Geitner, Machinery Component Maintenance and Repair: top + bottom = sum of the sides, within two gauge steps',
  ),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.10 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0.5 mm, starboard 0 mm, bottom 0.5 mm, port 0 mm
#            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ do not close
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.10 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0.5 mm, starboard 0 mm, bottom -0.5 mm, port 0 mm
  }
}`,
  run: (_facts, lookup) => {
    const c = correction(lookup)
    return c ? doNotClose(lookup, c.readBy.rim ?? 'offsets', c.rimClosure) : []
  },
  fixes: ({ check: id }, ground) => nextReading(ground, id),
})
