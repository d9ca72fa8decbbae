import { least } from '../../quantity/extremes.ts'
import { fraction, inRange, positive } from '../guard.ts'

/** Time, s, in which a battery is empty at a constant current: H (C / (I H))^k, with the capacity C (A·s) that is stated for a discharge in the time H (s),
 * the current I (A) and the exponent k (1 to 2). At less current than C / H the capacity is taken as stated, not as more. All above 0, else OutOfRange.
 * Source: Peukert 1897, in the form for a stated hour rate.
 * @example peukertTime({ capacity: 360e3, hourRate: 72e3, exponent: 1.2, current: 50 }) // ≈ 4542.9 */
export function peukertTime(given: {
  readonly capacity: number
  readonly hourRate: number
  readonly exponent: number
  readonly current: number
}): number {
  const { capacity, hourRate, exponent, current } = given
  inRange('Peukert exponent', exponent, 1, 2)
  const plain = positive('capacity', capacity) / positive('current', current)
  return Math.min(plain, positive('hour rate', hourRate) * (plain / hourRate) ** exponent)
}

/** A string of a bank. */
export interface BatteryString {
  /** Capacity, A·s. */
  readonly capacity: number
  /** V */
  readonly nominal: number
  /** Share of the capacity that may be taken out. */
  readonly usable: number
  readonly peukert?: { readonly exponent: number; readonly hourRate: number }
}

/** Current of each string, A, that gives `power` (W) together at its nominal voltage: as strings in parallel share it, in proportion to their capacity.
 * At least one string, all above 0, else OutOfRange. Source: strings of one kind have a resistance that goes with 1 / capacity [common practice].
 * @example stringCurrents([{ capacity: 756e3, nominal: 96, usable: 0.8 }], 9600) // [100] */
export function stringCurrents(strings: readonly BatteryString[], power: number): readonly number[] {
  const energy = strings.reduce(
    (sum, { capacity, nominal }) =>
      sum + positive('capacity', capacity) * positive('nominal voltage', nominal),
    0,
  )
  const rate = positive('power', power) / inRange('energy of the bank (J)', energy, 1e-12, 1e15)
  return strings.map(({ capacity }) => rate * capacity)
}

/** Current to capacity, 1/h, at which strings in parallel give `power` (W) at their nominal voltage: 1 empties the capacity in an hour, whatever of it may be
 * used. It is the same for each of them. At least one string, all above 0, else OutOfRange. Source: definition of the C-rate; see `stringCurrents`.
 * @example dischargeRate([{ capacity: 756e3, nominal: 96, usable: 0.8 }], 9600) // ≈ 0.47619 */
export function dischargeRate(strings: readonly BatteryString[], power: number): number {
  const [current] = stringCurrents(strings, power)
  const [string] = strings
  return ((current ?? Number.NaN) * 3600) / (string?.capacity ?? Number.NaN)
}

/** Time, s, for which a bank gives `power` (W) until `reserve`, a share of what is usable, is left: that of the string that is done first. Source: energy
 * balance; `peukertTime` where a string has an exponent.
 * @example endurance([{ capacity: 756e3, nominal: 96, usable: 0.8 }], 9600, 0.2) // ≈ 4838.4 */
export function endurance(strings: readonly BatteryString[], power: number, reserve: number): number {
  const kept = 1 - inRange('reserve', reserve, 0, 0.99)
  const currents = stringCurrents(strings, power)
  const times = strings.map(({ capacity, usable, peukert }, i) => {
    const current = currents[i] ?? Number.NaN
    const empty = peukert
      ? peukertTime({ capacity, current, ...peukert })
      : positive('capacity', capacity) / positive('current', current)
    return empty * fraction('usable share', usable) * kept
  })
  return inRange('endurance (s)', least(times) ?? Number.NaN, 0, 1e15)
}
