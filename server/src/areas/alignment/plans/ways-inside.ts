import { formatGaugeStep, formatLength, formatShim } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { listed } from '../../common/listed.ts'
import type { WayInside } from './choose-moves.ts'
import type { Correction } from './correction.ts'

/** Ways that are needed together, feet that need the same of a kind named at once. */
function formatFeetTogether(together: readonly WayInside[], system: UnitSystem): string {
  const grouped = new Map<string, string[]>()
  for (const way of together) {
    const words = formatWayInside(way, system)
    grouped.set(words, [...(grouped.get(words) ?? []), ...('foot' in way ? [way.foot] : [])])
  }
  return [...grouped]
    .map(([words, feet]) => (feet.length === 0 ? words : `${words} at ${listed(feet)}`))
    .join(' and ')
}

/** Packs that are thinner than what would have to come out. */
function tooHigh(c: Correction, system: UnitSystem): string | undefined {
  const feet = new Map<string, string[]>()
  for (const [i, { name, vertical }] of c.feet.entries()) {
    const pack = c.hardware?.feet[i]?.pack
    if (c.adjuster !== 'shims' || pack === undefined || -vertical.value <= pack + 1e-9) continue
    const problem = `have packs of ${formatShim(pack, system)}, and ${formatLength(-vertical.value, system)} would have to come out`
    feet.set(problem, [...(feet.get(problem) ?? []), name])
  }
  const thin = [...feet].map(([problem, names]) => `${listed(names)} ${problem}`)
  return thin.length === 0 ? undefined : `The bed is too high: ${thin.join('; ')}.`
}

/** One way to bring the machine inside, in words. */
function formatWayInside(way: WayInside, system: UnitSystem): string {
  switch (way.type) {
    case 'finer-step':
      return `turning the nuts by ${{ 2: 'half flats', 4: 'quarter flats', 8: 'eighths of a flat' }[way.partsOfFlat] ?? 'finer steps'}`
    case 'thinner-shim':
      return `shims of ${formatShim(way.thickness, system)}`
    case 'travel':
      return `${formatLength(Math.abs(way.up), system)} of travel ${way.up < 0 ? 'down' : 'up'}`
    case 'hole-clearance':
      return `holes that let the feet go ${formatLength(way.sideways, system)} to either side`
    case 'off-centre':
      return `reading the rims, then letting the machine flange move by up to ${formatLength(way.by, system)}`
  }
}

/** What no steps do. A place of the flange that was not read has no limits: it is left where it is. */
function whatIsNotReached({ untried, offsetBasis }: Correction): string {
  const [none, not] = untried
    ? ['No steps were found that', ', but not all could be tried']
    : ['No steps that the adjusters can make', '']
  return offsetBasis === 'unknown'
    ? `${none} bring the slope within its limit and leave the machine flange where it stands (its offset was not read)${not}`
    : `${none} bring the machine within its limits${not}`
}

/** Steps that leave the machine outside, and what would not; or inside, but nearer to a limit than the gauge can tell. */
export function notReached(c: Correction, system: UnitSystem): string | undefined {
  if (!c.predicted || c.verdict === 'within' || c.withheld) return undefined
  if (!c.predicted.inside)
    return `${whatIsNotReached(c)}; these bring it nearest to them. ${
      c.ways.length > 0
        ? `What would work: ${c.ways.map((together) => formatFeetTogether(together, system)).join('; or ')}.`
        : (tooHigh(c, system) ?? 'Set each foot to its height with a gauge.')
    }`
  return c.predicted.provable
    ? undefined
    : `These steps bring the machine within its limits, but too near to one for a gauge with steps of ${formatGaugeStep(c.gaugeStep, system)} to prove it. Take the next reading with a finer gauge.`
}
