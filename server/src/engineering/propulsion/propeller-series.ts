import { inRange, positive, whole } from '../guard.ts'
import { thrustTerms, torqueTerms } from './wageningen-terms.ts'

/** What a propeller of the series is made like. */
export interface SeriesPropeller {
  readonly blades: number
  /** AE/A0: expanded area of all blades to the area of the disc. */
  readonly areaRatio: number
  /** P/D. */
  readonly pitchRatio: number
}

/** What the series reaches, ends included. Source: Oosterveld & van Oossanen 1975. */
export const seriesRange = {
  blades: { low: 2, high: 7 },
  areaRatio: { low: 0.3, high: 1.05 },
  pitchRatio: { low: 0.5, high: 1.4 },
} as const

/** KT and KQ of one propeller as polynomials in J, coefficients from J⁰ to J³. */
export interface OpenWater {
  readonly thrust: readonly number[]
  readonly torque: readonly number[]
  /** The J at which there is no more thrust: nothing is said beyond. */
  readonly zeroThrust: number
}

const evaluate = (coefficients: readonly number[], advance: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * advance + coefficient, 0)

const powers = [0, 1, 2, 3] as const

/** Open-water curves of a propeller of the Wageningen B-series: KT = T / (ρ n² D⁴), KQ = Q / (ρ n² D⁵) over J = Va / (n D), each a sum of C · J^s ·
 * (P/D)^t · (AE/A0)^u · Z^v. For Z 2 to 7, AE/A0 0.30 to 1.05, P/D 0.5 to 1.4, else OutOfRange; Reynolds number 2e6, no correction. Source: Oosterveld
 * & van Oossanen 1975.
 * @example openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }).zeroThrust // ≈ 1.0943 */
export function openWater({ blades, areaRatio, pitchRatio }: SeriesPropeller): OpenWater {
  const { blades: z, areaRatio: area, pitchRatio: pitch } = seriesRange
  whole('number of blades', blades, z.low, z.high)
  // 280 mm of 200 mm is a little more than 1.4 as a double.
  inRange('blade area ratio', areaRatio, area.low * (1 - 1e-9), area.high * (1 + 1e-9))
  inRange('pitch ratio', pitchRatio, pitch.low * (1 - 1e-9), pitch.high * (1 + 1e-9))
  const collected = (terms: typeof thrustTerms): readonly number[] =>
    powers.map((power) =>
      terms
        .filter(([, advance]) => advance === power)
        .reduce((sum, [c, , t, u, v]) => sum + c * pitchRatio ** t * areaRatio ** u * blades ** v, 0),
    )
  const thrust = collected(thrustTerms)
  return { thrust, torque: collected(torqueTerms), zeroThrust: firstZero(thrust) }
}

/** KT falls with J over the whole range of the series and passes zero between 0.4 and 1.7 (tests/engineering/propulsion). */
function firstZero(thrust: readonly number[]): number {
  let [low, high] = [0, 0.05]
  while (evaluate(thrust, high) > 0 && high < 2) [low, high] = [high, high + 0.05]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (evaluate(thrust, middle) > 0) low = middle
    else high = middle
  }
  return low
}

/** Thrust coefficient KT at the advance ratio J: from 0 (bollard) to where there is no more thrust, else OutOfRange. Source: see `openWater`.
 * @example thrustCoefficient(openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }), 0.6) // ≈ 0.22339 */
export const thrustCoefficient = ({ thrust, zeroThrust }: OpenWater, advance: number): number =>
  Math.max(0, evaluate(thrust, inRange('advance ratio J', advance, 0, zeroThrust)))

/** Torque coefficient KQ at the advance ratio J: from 0 (bollard) to where there is no more thrust, else OutOfRange. Source: see `openWater`.
 * @example torqueCoefficient(openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }), 0.6) // ≈ 0.036309 */
export const torqueCoefficient = ({ torque, zeroThrust }: OpenWater, advance: number): number =>
  positive('torque coefficient KQ', evaluate(torque, inRange('advance ratio J', advance, 0, zeroThrust)))

/** Efficiency of the propeller alone, η0 = J KT / (2π KQ); 0 at bollard. Source: definition.
 * @example openWaterEfficiency(openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }), 0.6) // ≈ 0.5875 */
export const openWaterEfficiency = (propeller: OpenWater, advance: number): number =>
  (advance * thrustCoefficient(propeller, advance)) / (2 * Math.PI * torqueCoefficient(propeller, advance))
