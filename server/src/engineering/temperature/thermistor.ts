import { inRange, positive } from '../guard.ts'

const zero = 273.15
const t25 = zero + 25

/** Where the law of one B is of use, °C (common practice). B of a real thermistor differs by 1 to 3 % over its range. */
export const thermistorRange = { low: -55, high: 200 } as const

interface Thermistor {
  /** Resistance at 25 °C, Ω. */
  readonly r25: number
  /** B, K. */
  readonly beta: number
}

/** Resistance of an NTC thermistor, Ω, at `celsius` (-273 to 1000 °C, else OutOfRange): R25·exp(B·(1/T - 1/298.15)), `r25` in Ω and `beta` in K, both > 0.
 * Falls with temperature. Source: notes of two makers of thermistors.
 * @example thermistorResistance({ celsius: 50, r25: 10e3, beta: 3380 }) // ≈ 4160 */
export function thermistorResistance(given: Thermistor & { readonly celsius: number }): number {
  const t = zero + inRange('temperature in °C', given.celsius, -200, 1000)
  const r25 = positive('resistance at 25 °C (ohm)', given.r25)
  const beta = inRange('B (K)', positive('B (K)', given.beta), 1, 2e4)
  return r25 * Math.exp(beta * (1 / t - 1 / t25))
}

/** Temperature of an NTC thermistor, °C, from its resistance `ohms` (> 0): the inverse of `thermistorResistance`. Infinite resistance has none; where the
 * formula leads beyond -200 to 1000 °C, OutOfRange.
 * @example thermistorTemperature({ ohms: 1024, r25: 10e3, beta: 3380 }) // ≈ 100 */
export function thermistorTemperature(given: Thermistor & { readonly ohms: number }): number {
  const ohms = positive('resistance (ohm)', given.ohms)
  const r25 = positive('resistance at 25 °C (ohm)', given.r25)
  const beta = inRange('B (K)', positive('B (K)', given.beta), 1, 2e4)
  const inverse = 1 / t25 + Math.log(ohms / r25) / beta
  return inRange('temperature in °C', inverse > 0 ? 1 / inverse - zero : -zero, -200, 1000)
}

/** B of an NTC thermistor, K, from two points of it, `celsius` (°C, -200 to 1000) and `ohms` (> 0); OutOfRange where the temperatures are the same. Positive
 * where the resistance falls with temperature. Source: notes of two makers of thermistors.
 * @example thermistorBeta({ celsius: 25, ohms: 10e3 }, { celsius: 100, ohms: 1024.3 }) // ≈ 3380 */
export function thermistorBeta(first: Point, second: Point): number {
  const [t1, t2] = [first, second].map(
    ({ celsius }) => zero + inRange('temperature in °C', celsius, -200, 1000),
  ) as [number, number]
  const gap = 1 / t1 - 1 / t2
  positive('difference of the temperatures (K)', Math.abs(t1 - t2))
  return Math.log(positive('resistance (ohm)', first.ohms) / positive('resistance (ohm)', second.ohms)) / gap
}

interface Point {
  readonly celsius: number
  readonly ohms: number
}
