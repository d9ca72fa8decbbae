import { fraction, inRange, positive, temperature } from '../guard.ts'
import type { Assumption } from './assumption.ts'
import { resistanceAt } from './conductor.ts'

/** Volts lost in cables, from the resistance at operating temperature. The formulas of ABYC E-11 and ISO 13297 leave out the heat of the conductor:
 * their copper is at 29 °C and at 8 °C. */

export interface OperatingResistance {
  /** Ω/m at `conductorC`. */
  readonly ohmPerMetre: number
  readonly conductorC: number
  readonly assumptions: readonly Assumption[]
}

/** Resistance in service of a conductor of `ohmPerMetre` at 20 °C: at `conductorC`, or when that is not known
 * at the insulation's own limit `insulationC`, the worst case. OutOfRange on a bad number. Source: IEC 60028
 * coefficient.
 * @example operatingResistance({ ohmPerMetre: 0.001, insulationC: 90 }).ohmPerMetre // ≈ 0.0012751 */
export function operatingResistance(given: {
  readonly ohmPerMetre: number
  readonly insulationC: number
  readonly conductorC?: number
}): OperatingResistance {
  const insulationC = temperature('insulation', given.insulationC)
  const conductorC = given.conductorC ?? insulationC
  return {
    ohmPerMetre: resistanceAt({ resistance: given.ohmPerMetre, conductorC }),
    conductorC,
    assumptions: given.conductorC === undefined ? [{ type: 'insulation-limit', insulationC }] : [],
  }
}

/** One way of a circuit: `length` in m along the conductor and `ohmPerMetre` in Ω/m at operating
 * temperature. */
export interface Run {
  readonly length: number
  readonly ohmPerMetre: number
}

const runResistance = (name: string, run: Run): number =>
  positive(`length of the ${name}`, run.length) * positive(`resistance of the ${name}`, run.ohmPerMetre)

/** Volts lost out and back at `current` (A): I (R'₊ l₊ + R'₋ l₋). Without `back`, those lost in one pole. All numbers > 0, else OutOfRange.
 * Source: Ohm's law.
 * @example dcDrop({ current: 100, out: { length: 2, ohmPerMetre: 0.0005 }, back: { length: 3, ohmPerMetre: 0.0005 } }) // ≈ 0.25 */
export const dcDrop = (given: { readonly current: number; readonly out: Run; readonly back?: Run }): number =>
  positive('current', given.current) *
  (runResistance('out run', given.out) + (given.back ? runResistance('back run', given.back) : 0))

/** Volts lost between lines at line current `current` (A): √3 I l (R' cos φ + X' sin φ), current lagging.
 * `run` is one phase, one way. `ohmReactancePerMetre` X' is Ω/m, zero or more; `powerFactor` above zero, at
 * most 1; else OutOfRange. Left out: the part of the drop at right angles to the voltage, and skin effect
 * (below 95 mm² or so at some hundred Hz). Source: IEC 60364-5-52 Annex G.
 * @example threePhaseDrop({ current: 100, run: { length: 5, ohmPerMetre: 0.0007 }, ohmReactancePerMetre: 0, powerFactor: 1 }) // ≈ 0.6062 */
export function threePhaseDrop(given: {
  readonly current: number
  readonly run: Run
  readonly ohmReactancePerMetre: number
  readonly powerFactor: number
}): number {
  const cos = fraction('power factor', given.powerFactor)
  const reactance = inRange('reactance', given.ohmReactancePerMetre, 0, 1)
  const length = positive('length of the phase', given.run.length)
  const perAmpere =
    positive('resistance of the phase', given.run.ohmPerMetre) * cos + reactance * Math.sqrt(1 - cos ** 2)
  return Math.sqrt(3) * positive('current', given.current) * length * perAmpere
}

/** Reactance of touching single cores at `frequency` (Hz, > 0, else OutOfRange), Ω/m: 0.08 Ω/km at 50 Hz and
 * in proportion. Source: conventional value of UTE C 15-105.
 * @example touchingCoreReactance(200) // ≈ 0.00032 */
export const touchingCoreReactance = (frequency: number): number =>
  (0.08e-3 * positive('frequency', frequency)) / 50
