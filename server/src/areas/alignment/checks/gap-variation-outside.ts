import { check, published } from '../../../checks/check.ts'
import { formatLimit, formatUncertain } from '../../../quantity/format-measures.ts'
import { atRead, correction } from '../at-read.ts'
import { nextReading, writeMove } from '../fixes.ts'
import { afterOutside, countedFrom } from '../gaps-and-offsets.ts'
import { replacedBy } from '../plans/reading-history.ts'
import { formatLean } from '../plans/words.ts'

export default check({
  id: 'alignment/gap-variation-outside',
  severity: 'error',
  title: 'Gap variation above the limit',
  why: 'Faces that are not parallel bend the shaft once a turn: bearings, seal and gear wear, and bolts break. The gap variation is that of the plane through all gaps, so it includes a tilt between the places that were read.',
  source: published(
    'decision rule: ISO 14253-1; limit: the maker, else 0.001 in per inch of flange diameter (common practice)',
  ),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ gap variation
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
    if (c?.gapVariation.verdict !== 'outside') return []
    const { value, limit, limitFrom } = c.gapVariation
    const found = formatUncertain(value, lookup.system)
    const allowed = formatLimit(limit, lookup.system)
    const lean = formatLean(c)
    return [
      atRead(lookup, c.readBy.face, {
        message: `${countedFrom(c, 'gap variation')} is ${found}; ${allowed} is allowed.`,
        detail: `Limit: ${limitFrom}. ${lean}`,
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
