import type { Target } from '../../../engineering/alignment/feet.ts'
import type { InPlanes } from '../../../engineering/alignment/planes.ts'
import {
  formatLength,
  formatLimit,
  formatUncertain,
  isFormattedAsZero,
} from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { expanded, type Uncertain } from '../../../quantity/uncertainty.ts'
import { listed } from '../../common/listed.ts'
import type { Correction } from './correction.ts'
import { directionOf } from './directions.ts'
import type { Predicted } from './foot-correction-plan.ts'
import { magnitude } from './foot-words.ts'

const planes = ['vertical', 'horizontal'] as const

const alike = {
  vertical: 'the same at top and bottom',
  horizontal: 'the same at port and starboard',
} as const

/** `0.09 ± 0.01 mm low, 0.02 ± 0.01 mm to port`. */
const placed = (what: 'offset' | 'opening', of: InPlanes<Uncertain>, system: UnitSystem): string =>
  planes
    .map((plane) => {
      const u = magnitude(of[plane])
      return what === 'opening' && isFormattedAsZero(u.value, system)
        ? `${alike[plane]} (± ${formatLength(expanded(u), system)})`
        : `${formatUncertain(u, system)} ${directionOf(what, plane, of[plane].value)}`
    })
    .join(', ')

/** `0.20 mm high and 0.07 mm to starboard`; undefined where that is nothing. */
function aimed(what: 'offset' | 'opening', of: InPlanes<number>, system: UnitSystem): string | undefined {
  const parts = planes.flatMap((plane) =>
    isFormattedAsZero(of[plane], system)
      ? []
      : [`${formatLength(Math.abs(of[plane]), system)} ${directionOf(what, plane, of[plane])}`],
  )
  return parts.length === 0 ? undefined : listed(parts)
}

/** What the gauges show of a target: where the flange stands, and how the gap opens on the circle of the gauge. */
const shownBy = ({ vertical, horizontal }: Target, diameter: number) => ({
  offset: { vertical: vertical.offset, horizontal: horizontal.offset },
  opening: { vertical: -diameter * vertical.slope, horizontal: -diameter * horizontal.slope },
})

/** Where the machine is to stand, as the gauges show it; undefined without a target. */
export function formatAim(c: Correction, system: UnitSystem): string | undefined {
  if (!c.target) return undefined
  const aim = shownBy(c.target.target, c.gaugeDiameter)
  return `machine flange ${aimed('offset', aim.offset, system) ?? 'on the shaft axis'}, gap ${aimed('opening', aim.opening, system) ?? 'the same all round'}`
}

/** Where the gauges should stand, and how far from there they may. */
interface AimedReading {
  readonly flange?: string
  readonly gap: string
}

function aimedReading(c: Correction, system: UnitSystem): AimedReading | undefined {
  if (!c.target) return undefined
  const aim = shownBy(c.target.target, c.gaugeDiameter)
  const [gaps, offset] = [c.gapVariation, c.offset].map(
    (judged) => judged && formatLimit(judged.limit, system),
  )
  return {
    ...(offset && {
      flange: `${aimed('offset', aim.offset, system) ?? 'on the shaft axis'}, at most ${offset} from there`,
    }),
    gap: `${aimed('opening', aim.opening, system) ?? 'the same all round'}, at most ${gaps} from that`,
  }
}

/** What is allowed of the next reading. With a target it is said where the gauges should stand, and how far from there they may: `machine flange
 * 0.20 mm high, at most 0.15 mm from there`. */
export function formatAllowed(c: Correction, system: UnitSystem): string {
  const wanted = aimedReading(c, system)
  if (wanted)
    return [wanted.flange && `machine flange ${wanted.flange}`, `gap ${wanted.gap}`]
      .filter(Boolean)
      .join('; ')
  return [
    `gap variation at most ${formatLimit(c.gapVariation.limit, system)}`,
    c.offset && `offset at most ${formatLimit(c.offset.limit, system)}`,
  ]
    .filter(Boolean)
    .join(', ')
}

/** How machine and shaft have to be for the next reading, so that the figures hold: `, the machine hot as for this reading`. */
export const asBefore = ({ hot, target }: Correction): string =>
  [hot && ', the machine hot as for this reading', target && ', the shaft end as it was for this reading']
    .filter(Boolean)
    .join('')

/** What the next reading should show, in a sentence. */
export function formatNextReading(c: Correction, predicted: Predicted, system: UnitSystem): string {
  const { gapVariation, opening, offset } = predicted
  const flange = offset && `machine flange ${placed('offset', offset, system)}`
  const wanted = aimedReading(c, system)
  const beside = (words: string | undefined) => (words === undefined ? '' : ` (target: ${words})`)
  return wanted
    ? `The next reading, with the coupling parted${asBefore(c)}, should show ${[
        flange && `the ${flange}${beside(wanted.flange)}`,
        `the gap ${placed('opening', opening, system)}${beside(wanted.gap)}`,
      ]
        .filter(Boolean)
        .join(', and ')}.`
    : `The next reading${c.hot ? `${asBefore(c)},` : ''} should show ${[`gap variation ${formatUncertain(gapVariation, system)}`, flange].filter(Boolean).join('; ')}.`
}
