import { check, published } from '../../../checks/check.ts'
import { formatLength, formatLimit } from '../../../quantity/format-measures.ts'
import { atRead, correction } from '../at-read.ts'
import { nextReading } from '../fixes.ts'
import { formatAngle } from '../plans/fault.ts'
import { replacedBy } from '../plans/reading-history.ts'
import { formatRoundFact } from '../plans/readings.ts'

export default check({
  id: 'alignment/repeated-readings-differ',
  severity: 'warning',
  title: 'One place read twice with different values',
  why: 'Two readings of one gap differ by at most one step of the gauge. If they differ more, one was misread, or the shaft or the machine moved between them.',
  source: published('a value read to a step is known to half a step: JCGM 100 (GUM) F.2.2.1'),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm, top 1.80 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ 0.12 mm
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm, top 1.90 mm
  }
}`,
  run: (_facts, lookup) => {
    const c = correction(lookup)
    return (['gaps', 'offsets'] as const).flatMap((what) => {
      const by = what === 'gaps' ? c?.readBy.face : c?.readBy.rim
      const apart = c?.repeats?.[what]
      if (!by || !apart) return []
      const found = formatLength(apart.difference, lookup.system)
      const limit = formatLimit(apart.allowed, lookup.system)
      return [
        atRead(lookup, by, {
          message: `The ${formatRoundFact(by)} read more than once at ${formatAngle(apart.angle)} differ by ${found}; the gauge explains ${limit}.`,
          todo: 'Read all of them again before you move anything.',
          found,
          limit: `at most ${limit}`,
        }),
      ]
    })
  },
  fixes: ({ check: id }, ground) => nextReading(ground, id),
})
