import { inRange, positive } from '../guard.ts'

/** Minus the temperature, °C, where the resistance of copper would be zero by its slope near 0 °C: IEC 60034-1. US practice has 234.5. */
export const copperConstant = 235

/** Mean temperature of a copper winding, °C, from its resistance: (R2/R1)·(k + t1) - k. `cold` and `hot` are its resistances, Ω > 0, `celsius` (-60 to 250 °C) the
 * temperature of the first. OutOfRange where the result is beyond -100 to 1000 °C. Mean of the winding: its hottest spot is about 10 K above. Both between
 * the same terminals. Source: IEC 60034-1 (constant 235 from memory); with 234.5, 80 Ω at 20 °C to 100 Ω is a rise of 63.63 K (public forum).
 * @example windingTemperature({ cold: 80, celsius: 20, hot: 100, constant: 234.5 }) // ≈ 83.625 */
export function windingTemperature(given: {
  readonly cold: number
  readonly celsius: number
  readonly hot: number
  readonly constant?: number
}): number {
  const constant = inRange('constant of copper', given.constant ?? copperConstant, 220, 250)
  const celsius = inRange('temperature in °C', given.celsius, -60, 250)
  const ratio = positive('hot resistance (ohm)', given.hot) / positive('cold resistance (ohm)', given.cold)
  return inRange('temperature in °C', ratio * (constant + celsius) - constant, -100, 1000)
}
