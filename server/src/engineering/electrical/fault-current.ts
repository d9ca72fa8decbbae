import { positive, whole, within } from './guard.ts'

/** Short-circuit current of a battery bank. A battery-management current limit does not cap it. */

/** Resistance of a bank, Ω: R_unit · series / parallel, and the links between units of one string.
 * `unitResistance` of a cell or battery (Ω, > 0), `series` and `parallel` whole (1 to 10 000),
 * `linkResistance` of all links of one string (Ω, 0 or more), else RangeError. Source: battery fault-current
 * practice; strings in parallel add current, units in series do not.
 * @example bankResistance({ unitResistance: 0.0025, series: 2, parallel: 3 }) // ≈ 0.00166667 */
export function bankResistance(given: {
  readonly unitResistance: number
  readonly series: number
  readonly parallel: number
  readonly linkResistance?: number
}): number {
  const units =
    positive('resistance of a unit', given.unitResistance) * whole('units in series', given.series, 1, 1e4)
  const links = within('resistance of the links', given.linkResistance ?? 0, 0, 1e3)
  return (units + links) / whole('strings in parallel', given.parallel, 1, 1e4)
}

/** Short-circuit current, A: V_oc / (R_bank + R_loop). `voltage` open circuit (V, > 0), `bankResistance` (Ω,
 * > 0), `loopResistance` of the cable to the fault (Ω, 0 or more; 0 unless given, which is what a device at
 * the terminals must interrupt), else RangeError.
 * @example faultCurrent({ voltage: 12, bankResistance: 0.005 }) // ≈ 2400 */
export const faultCurrent = (given: {
  readonly voltage: number
  readonly bankResistance: number
  readonly loopResistance?: number
}): number =>
  positive('voltage', given.voltage) /
  (positive('resistance of the bank', given.bankResistance) +
    within('resistance of the loop', given.loopResistance ?? 0, 0, 1e3))
