import { check, published } from '../../../checks/check.ts'
import { formatLimit, formatUncertain } from '../../../quantity/format-measures.ts'
import { atRead, correction } from '../at-read.ts'
import { nextReading, writeMove } from '../fixes.ts'
import { afterOutside } from '../gaps-and-offsets.ts'
import { replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/offset-outside',
  severity: 'error',
  title: 'Offset above the limit',
  why: 'Offset shafts load the coupling and the bearings at every turn.',
  source: published(
    'decision rule: ISO 14253-1; limit: the maker, else that of the gap variation (common practice, no source)',
  ),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0.40 mm, starboard 0 mm, bottom -0.40 mm, port 0 mm
#            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ from the shaft axis
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
    if (c?.offset?.verdict !== 'outside') return []
    const found = formatUncertain(c.offset.value, lookup.system)
    const allowed = formatLimit(c.offset.limit, lookup.system)
    return [
      atRead(lookup, c.readBy.rim, {
        message: `The machine flange is ${found} from ${c.target ? 'its target' : 'the shaft axis'}; ${allowed} is allowed.`,
        detail: `Limit: ${c.offset.limitFrom}.`,
        todo: afterOutside(c, lookup),
        found,
        limit: `at most ${allowed}`,
        assumptions: c.assumptions,
        data: { drive: c.drive, reading: c.reading },
      }),
    ]
  },
  fixes: ({ check: id }, ground) => [...writeMove(ground, id), ...nextReading(ground, id)],
})
