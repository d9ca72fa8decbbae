import { betweenPoints, type CurvePoint } from '../between-points.ts'
import { inRange, positive } from '../guard.ts'
import type { Water } from './water.ts'

/** Resistance of a hull in calm water, by one of three ways. Lengths in m, speeds in m/s, forces in N. */
export type HullResistance =
  | { readonly by: 'points'; readonly points: readonly CurvePoint[] }
  | {
      readonly by: 'friction'
      readonly waterline: number
      readonly wettedArea: number
      /** k of 1 + k. */
      readonly formFactor: number
      readonly wave: readonly CurvePoint[]
    }
  /** `displacement` in kg. */
  | { readonly by: 'displacement-rule'; readonly waterline: number; readonly displacement: number }

const foot = 0.3048
const pound = 0.45359237
const knot = 1852 / 3600
const horsepower = 745.69987158

/** Friction coefficient of a flat plate, CF = 0.075 / (log10 Re − 2)², at the Reynolds number of its length; for 1e5 to 1e11, else OutOfRange. Source: ITTC
 * 1957 model-ship correlation line.
 * @example frictionCoefficient(1e7) // 0.003 */
export const frictionCoefficient = (reynolds: number): number =>
  0.075 / (Math.log10(inRange('Reynolds number', reynolds, 1e5, 1e11)) - 2) ** 2

/** The highest speed-length ratio, kn/√ft, that the displacement rule holds for [from memory]. */
const highestRatio = 1.5

/** Share of the shaft power of the displacement rule that moves the hull. High for a small propeller, so that the resistance is not too low. Common
 * practice, no source. */
const ruleEfficiency = 0.6

/** Shaft power of a displacement hull, W: lb / (10.665 √ft/kn · S/L)… as SHP = lb (S/L / 10.665)³, with S/L = kn / √ft, up to 1.5, else OutOfRange. It
 * includes the weather and an ordinary propeller: an upper estimate, most of all for slender hulls. `speed` m/s, `waterline` m, `displacement` kg. Source:
 * Gerr, The Propeller Handbook [from memory].
 * @example displacementPower({ speed: 3.0867, waterline: 9.144, displacement: 4535.9 }) // ≈ 8082 */
export function displacementPower(given: {
  readonly speed: number
  readonly waterline: number
  readonly displacement: number
}): number {
  const ratio = given.speed / knot / Math.sqrt(positive('waterline length', given.waterline) / foot)
  inRange('speed-length ratio in kn/√ft', ratio, 0, highestRatio * (1 + 1e-9))
  return (positive('displacement', given.displacement) / pound) * (ratio / 10.665) ** 3 * horsepower
}

/** From which to which speed a resistance is known, m/s. Nothing is read beyond. The displacement rule holds from rest to a speed-length ratio of 1.5; the
 * others between their first and last point.
 * @example resistanceRange({ by: 'points', points: [{ at: 2, value: 380 }, { at: 3, value: 1050 }] }) // { low: 2, high: 3 } */
export function resistanceRange(hull: HullResistance): { readonly low: number; readonly high: number } {
  if (hull.by === 'displacement-rule')
    return {
      low: 0,
      high: highestRatio * Math.sqrt(positive('waterline length', hull.waterline) / foot) * knot,
    }
  const points = hull.by === 'points' ? hull.points : hull.wave
  return { low: points[0]?.at ?? Number.NaN, high: points.at(-1)?.at ?? Number.NaN }
}

/** Resistance in calm water, N, at a speed in m/s; undefined outside `resistanceRange`. Friction: ½ ρ S V² (1 + k) CF and the stated wave resistance,
 * never friction alone. Displacement rule: 0.6 of the shaft power over the speed. Source: ITTC 1957; for the rule see `displacementPower`.
 * @example hullResistance({ by: 'points', points: [{ at: 2, value: 380 }, { at: 3, value: 1050 }] }, { density: 1025.9, viscosity: 1.188e-6 }, 2.5) // 715 */
export function hullResistance(
  hull: HullResistance,
  { density, viscosity }: Water,
  speed: number,
): number | undefined {
  const { low, high } = resistanceRange(hull)
  if (!(speed >= low * (1 - 1e-9) && speed <= high * (1 + 1e-9))) return undefined
  if (hull.by === 'points') return betweenPoints(hull.points, speed)
  if (speed === 0) return 0
  if (hull.by === 'displacement-rule') return (ruleEfficiency * displacementPower({ ...hull, speed })) / speed
  const wave = betweenPoints(hull.wave, speed)
  // At a crawl the friction is as good as none, whatever its coefficient.
  const reynolds = Math.max(1e5, (speed * positive('waterline length', hull.waterline)) / viscosity)
  const friction =
    0.5 *
    density *
    positive('wetted area', hull.wettedArea) *
    speed ** 2 *
    (1 + inRange('form factor k', hull.formFactor, 0, 1)) *
    frictionCoefficient(reynolds)
  return wave === undefined ? undefined : wave + friction
}
