import type { HullResistance } from '../../../engineering/propulsion/resistance.ts'
import { waterOf } from '../../../engineering/propulsion/water.ts'
import type { Block } from '../../../job/model.ts'
import { formatShare } from '../../../quantity/format-measures.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { Missing, must } from './attempt.ts'

/** Taken where the file is silent: a single screw is in the wake of the keel, twin screws are outside it. Common practice, no source. */
const flow = { single: { wake: 0.15, deduction: 0.15 }, several: { wake: 0.05, deduction: 0.1 } }
const usualWater = { kind: 'sea', celsius: 15 } as const
const zeroCelsius = 273.15

const percent = (share: number): string => formatShare(share, 3)

export const hullOf = ({ ofKind }: FileLookup): Block | undefined => ofKind('hull')[0]
export const serviceOf = ({ ofKind }: FileLookup): Block | undefined => ofKind('service')[0]

/** The water of the service, with what was assumed. */
export function waterSaid(service: Block | undefined) {
  const kind = statedFact(service, 'service.water')
  const kelvin = statedFact(service, 'service.water-temperature')
  const celsius = kelvin === undefined ? usualWater.celsius : kelvin - zeroCelsius
  return {
    kind: kind ?? usualWater.kind,
    celsius,
    ...waterOf(kind ?? usualWater.kind, celsius),
    assumptions: [
      ...(kind === undefined ? ['sea water'] : []),
      ...(kelvin === undefined ? [`water of ${usualWater.celsius} °C`] : []),
    ],
  }
}

/** Wake fraction and thrust deduction of a hull with so many screws. */
export function flowSaid(hull: Block | undefined, screws: number) {
  const usual = screws === 1 ? flow.single : flow.several
  const wake = statedFact(hull, 'hull.wake-fraction')
  const deduction = statedFact(hull, 'hull.thrust-deduction')
  return {
    wake: wake ?? usual.wake,
    thrustDeduction: deduction ?? usual.deduction,
    assumptions: [
      ...(wake === undefined ? [`wake fraction is ${percent(usual.wake)}`] : []),
      ...(deduction === undefined ? [`thrust deduction is ${percent(usual.deduction)}`] : []),
    ],
  }
}

const plain = (points: readonly { readonly at: number; readonly value: number }[]) =>
  points.map(({ at, value }) => ({ at, value }))

/** How the resistance of a hull is known, with what was assumed. Throws what is missing. */
export function resistanceSaid(hull: Block): {
  readonly by: HullResistance
  readonly assumptions: readonly string[]
} {
  const points = statedFact(hull, 'hull.calm-water-resistance')
  if (points) return { by: { by: 'points', points: plain(points) }, assumptions: [] }
  const waterline = statedFact(hull, 'hull.waterline-length')
  const wettedArea = statedFact(hull, 'hull.wetted-area')
  const wave = statedFact(hull, 'hull.wave-resistance')
  if (wettedArea !== undefined && wave !== undefined) {
    const formFactor = statedFact(hull, 'hull.form-factor')
    return {
      by: {
        by: 'friction',
        waterline: must(waterline, 'the waterline-length of the hull'),
        wettedArea,
        formFactor: formFactor ?? usualFormFactor,
        wave: plain(wave),
      },
      assumptions: formFactor === undefined ? [`form factor k is ${usualFormFactor}`] : [],
    }
  }
  const displacement = statedFact(hull, 'hull.displacement')
  if (waterline === undefined || displacement === undefined)
    throw new Missing('the resistance of the hull is not stated, nor its displacement and waterline-length')
  return {
    by: { by: 'displacement-rule', waterline, displacement },
    assumptions: [byTheRule],
  }
}

/** Of a displacement hull of a boat. Common practice, no source. */
const usualFormFactor = 0.2

export const byTheRule =
  'resistance is estimated by the displacement-hull rule (from memory), which includes weather and is an upper estimate for slender hulls'
