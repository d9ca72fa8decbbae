/** Every number that comes into this folder passes one of these, so that no NaN, infinity or overflow comes
 * out. */

/** `value`, or RangeError when it is not a number from `low` to `high`, ends included.
 * @example within('insulation', 90, 60, 250) // 90 */
export function within(name: string, value: number, low: number, high: number): number {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} must be a number from ${low} to ${high}, not ${value}`)
  }
  return value
}

/** `value`, or RangeError when it is not above zero or is no physical size (1e-12 to 1e9, SI).
 * @example positive('current', 120) // 120 */
export function positive(name: string, value: number): number {
  if (!(value > 0)) throw new RangeError(`${name} must be a number above zero, not ${value}`)
  return within(name, value, 1e-12, 1e9)
}

/** `value`, or RangeError when it is not an efficiency or power factor: above zero, at most 1.
 * @example fraction('efficiency', 0.85) // 0.85 */
export const fraction = (name: string, value: number): number => within(name, positive(name, value), 0, 1)

/** `value`, or RangeError when it is not a whole number from `low` to `high`.
 * @example whole('conductors in the bundle', 3, 1, 1000) // 3 */
export function whole(name: string, value: number, low: number, high: number): number {
  if (!Number.isInteger(value)) throw new RangeError(`${name} must be a whole number, not ${value}`)
  return within(name, value, low, high)
}

/** `celsius`, or RangeError outside −60 to 250 °C, where the figures for copper and its insulation are of
 * use. Rounded to a millionth of a degree, so that a class that came through kelvins still meets its column.
 * @example temperature('conductor', 90) // 90 */
export const temperature = (name: string, celsius: number): number =>
  Math.round(within(`${name} in °C`, celsius, -60, 250) * 1e6) / 1e6

/** Whether `value` comes up to `limit`, the last bits of a double aside: 35e-6 m² is 35 mm², whatever it went
 * through.
 * @example reaches(0.1 + 0.2, 0.3) // true */
export const reaches = (value: number, limit: number): boolean => value >= limit - 1e-9 * Math.abs(limit)

/** Whether two numbers are the same, the last bits of a double aside.
 * @example same(0.1 + 0.2, 0.3) // true */
export const same = (a: number, b: number): boolean => reaches(a, b) && reaches(b, a)
