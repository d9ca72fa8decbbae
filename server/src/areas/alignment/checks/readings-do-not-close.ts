import { check, published } from '../../../checks/check.ts'
import { correction } from '../at-read.ts'
import { nextReading } from '../fixes.ts'
import { doNotClose } from '../gaps-and-offsets.ts'
import { replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/readings-do-not-close',
  severity: 'warning',
  title: 'Readings that contradict each other',
  why: 'On flat faces, top plus bottom equals port plus starboard, whichever way the flange is tilted. If not, a gap was misread, the gauge was not straight, or a face is not flat.',
  source: published(
    'Bloch & Geitner, Machinery Component Maintenance and Repair: top + bottom = sum of the sides, within two gauge steps',
  ),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.60 mm, bottom 1.92 mm, port 1.60 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ do not close
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: (_facts, lookup) => {
    const c = correction(lookup)
    return c ? doNotClose(lookup, c.readBy.face, c.closure) : []
  },
  fixes: ({ check: id }, ground) => nextReading(ground, id),
})
