import { fraction, positive } from '../guard.ts'
import type { Assumption } from './assumption.ts'

/** Currents of a propulsion motor, from its shaft back to the battery. */

/** DC power for `shaftPower` (W) on the motor shaft, W: P / (η_motor η_inverter). Power above zero, efficiencies above zero and at most 1, else
 * OutOfRange. Source: definition of efficiency.
 * @example dcPower({ shaftPower: 10e3, motorEfficiency: 0.9, inverterEfficiency: 0.95 }) // ≈ 11695.9 */
export const dcPower = (given: {
  readonly shaftPower: number
  readonly motorEfficiency: number
  readonly inverterEfficiency: number
}): number =>
  positive('shaft power', given.shaftPower) /
  (fraction('motor efficiency', given.motorEfficiency) *
    fraction('inverter efficiency', given.inverterEfficiency))

/** Current drawn from the battery, A, for a `dcPower` at `lowestVoltage` (V, > 0, else OutOfRange), the low end of the battery window, where it is
 * greatest. Source: definition of efficiency.
 * @example dcCurrent({ shaftPower: 10e3, lowestVoltage: 80, motorEfficiency: 0.9, inverterEfficiency: 0.95 }) // ≈ 146.20 */
export const dcCurrent = (
  given: Parameters<typeof dcPower>[0] & { readonly lowestVoltage: number },
): number =>
  positive('current of the battery', dcPower(given) / positive('lowest voltage', given.lowestVoltage))

/** Line current of a three-phase motor, A: P / (√3 U cos φ η). `shaftPower` W, `lineVoltage` V rms between
 * lines, `powerFactor` and `efficiency` above zero and at most 1, else OutOfRange. Source: any text on
 * electrical machines.
 * @example lineCurrent({ shaftPower: 12750, lineVoltage: 415, powerFactor: 0.77, efficiency: 0.85 }) // ≈ 27.1014 */
export function lineCurrent(given: {
  readonly shaftPower: number
  readonly lineVoltage: number
  readonly powerFactor: number
  readonly efficiency: number
}): number {
  const perAmpere = threePhaseInput({ ...given, current: 1 })
  return positive(
    'line current',
    positive('shaft power', given.shaftPower) / (perAmpere * fraction('efficiency', given.efficiency)),
  )
}

/** Electrical power into a three-phase motor, W: √3 U I cos φ. `lineVoltage` V rms between lines, `current` A
 * in the line, `powerFactor` above zero and at most 1, else OutOfRange. Source: any text on electrical
 * machines.
 * @example threePhaseInput({ lineVoltage: 415, current: 70, powerFactor: 0.88 }) // ≈ 44278.1 */
export const threePhaseInput = (given: {
  readonly lineVoltage: number
  readonly current: number
  readonly powerFactor: number
}): number =>
  Math.sqrt(3) *
  positive('line voltage', given.lineVoltage) *
  positive('current', given.current) *
  fraction('power factor', given.powerFactor)

export interface EstimatedVoltage {
  /** V rms between lines. */
  readonly volts: number
  readonly assumptions: readonly Assumption[]
}

/** Highest line voltage an inverter makes from `dcVoltage` (V, > 0, else OutOfRange) without overmodulation, by space vectors: V / √2. For a motor
 * whose voltage is not given; the current worked out from it is the least there can be, so the figure on the motor's plate governs. Source: a
 * phase peak of 2/√3 times V/2 (overmodulation documentation). [derived]
 * @example inverterVoltage(96).volts // ≈ 67.882 */
export const inverterVoltage = (dcVoltage: number): EstimatedVoltage => ({
  volts: positive('DC voltage', dcVoltage) * Math.SQRT1_2,
  assumptions: [{ type: 'highest-motor-voltage' }, { type: 'space-vectors' }],
})
