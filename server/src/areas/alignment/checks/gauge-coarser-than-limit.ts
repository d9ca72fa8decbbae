import { at, check, published } from '../../../checks/check.ts'
import { formatGaugeStep, formatLimit } from '../../../quantity/format-measures.ts'
import { correction } from '../at-read.ts'
import { replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/gauge-coarser-than-limit',
  severity: 'warning',
  title: 'Gauge too coarse for the limit',
  why: 'A gauge whose smallest step is as large as the limit can never show that the faces are within it.',
  source: published(
    'decision rule: ISO 14253-1; a value read to a step is known to half a step: JCGM 100 (GUM) F.2.2.1',
  ),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: replacedBy,
  needs: { gauge: 'reading.gauge' },
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.1 mm
#          ^^^^^^ 0.10 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
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
  run: ({ gauge }, lookup) => {
    const c = correction(lookup)
    if (!c || gauge.value < c.gapVariation.limit) return []
    const found = formatGaugeStep(gauge.value, lookup.system)
    const limit = formatLimit(c.gapVariation.limit, lookup.system)
    return [
      at(gauge, {
        message: `Gauge steps of ${found} are too coarse for a gap variation of ${limit}.`,
        detail: 'This gauge cannot show that the faces are within the limit.',
        todo: 'Use a gauge with a step of a fifth of the limit, or finer.',
        found,
        limit: `below ${limit}`,
      }),
    ]
  },
})
