import type { Uncertain } from '../quantity/uncertainty.ts'

/** The value itself when it lies in [low, high], else RangeError naming it. NaN lies nowhere.
 * @example inRange('ratio', 2.5, 1, 10) // 2.5 */
export function inRange(name: string, value: number, low: number, high: number): number {
  if (value >= low && value <= high) return value
  throw new RangeError(`${name}: expected ${low} to ${high}, got ${value}`)
}

/** A length or coordinate in m that may be of either sign: within 100 m, else RangeError.
 * @example coordinate('x of foot', -0.18) // -0.18 */
export const coordinate = (name: string, value: number): number => inRange(`${name} (m)`, value, -100, 100)

/** A size in m: 0.1 mm to 100 m, else RangeError.
 * @example size('gauge radius', 0.055) // 0.055 */
export const size = (name: string, value: number): number => inRange(`${name} (m)`, value, 1e-4, 100)

/** A value in m or rad and its standard uncertainty: within ±100, uncertainty not negative, else RangeError.
 * @example uncertain('offset', { value: 1e-4, standard: 1e-5 }).standard // 1e-5 */
export function uncertain(name: string, u: Uncertain): Uncertain {
  inRange(name, u.value, -100, 100)
  inRange(`uncertainty of ${name}`, u.standard, 0, 100)
  return u
}
