import { formatNumber } from '../quantity/format.ts'
import { OutOfRange } from '../quantity/out-of-range.ts'
import type { Uncertain } from '../quantity/uncertainty.ts'

/** Every number that comes into this folder passes one of these, so that no NaN, infinity or overflow comes out. What they say is shown to
 * people. */

/** `value`, or OutOfRange when it is not a number from `low` to `high`, ends included.
 * @example inRange('ratio', 2.5, 1, 10) // 2.5 */
export function inRange(name: string, value: number, low: number, high: number): number {
  if (value >= low && value <= high) return value
  const [from, to, found] = [low, high, value].map((number) => formatNumber(number, 6))
  throw new OutOfRange(`${name} must be a number from ${from} to ${to}, not ${found}`)
}

/** A length or coordinate in m that may be of either sign: within 100 m, else OutOfRange.
 * @example coordinate('x of foot', -0.18) // -0.18 */
export const coordinate = (name: string, value: number): number => inRange(`${name} (m)`, value, -100, 100)

/** A size in m: 0.1 mm to 100 m, else OutOfRange.
 * @example size('gauge radius', 0.055) // 0.055 */
export const size = (name: string, value: number): number => inRange(`${name} (m)`, value, 1e-4, 100)

/** A value in m or rad and its standard uncertainty: within ±100, uncertainty not negative, else OutOfRange.
 * @example uncertain('offset', { value: 1e-4, standard: 1e-5 }).standard // 1e-5 */
export function uncertain(name: string, u: Uncertain): Uncertain {
  inRange(name, u.value, -100, 100)
  inRange(`uncertainty of ${name}`, u.standard, 0, 100)
  return u
}

/** `value`, or OutOfRange when it is not above zero or is no physical size (1e-12 to 1e9, SI).
 * @example positive('current', 120) // 120 */
export function positive(name: string, value: number): number {
  if (!(value > 0)) throw new OutOfRange(`${name} must be a number above zero, not ${formatNumber(value, 6)}`)
  return inRange(name, value, 1e-12, 1e9)
}

/** `value`, or OutOfRange when it is not an efficiency or power factor: above zero, at most 1.
 * @example fraction('efficiency', 0.85) // 0.85 */
export const fraction = (name: string, value: number): number => inRange(name, positive(name, value), 0, 1)

/** `value`, or OutOfRange when it is not a whole number from `low` to `high`.
 * @example whole('conductors in the bundle', 3, 1, 1000) // 3 */
export function whole(name: string, value: number, low: number, high: number): number {
  if (!Number.isInteger(value))
    throw new OutOfRange(`${name} must be a whole number, not ${formatNumber(value, 6)}`)
  return inRange(name, value, low, high)
}

/** `celsius`, or OutOfRange outside −60 to 250 °C, where the figures for copper and its insulation are of
 * use. Rounded to a millionth of a degree, so that a class that came through kelvins still meets its column.
 * @example temperature('conductor', 90) // 90 */
export const temperature = (name: string, celsius: number): number =>
  Math.round(inRange(`${name} in °C`, celsius, -60, 250) * 1e6) / 1e6
