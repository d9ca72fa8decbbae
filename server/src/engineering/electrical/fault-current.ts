import { positive } from '../guard.ts'

/** Short-circuit current of a battery, A: `voltage` (V, open circuit) over its `internalResistance` (Ω); both > 0, else OutOfRange. At the
 * terminals, with no cable in the loop: what a device there must interrupt. A battery-management limit does not cap it; strings in parallel add
 * their currents. Source: Ohm's law; battery fault-current practice.
 * @example faultCurrent({ voltage: 12, internalResistance: 0.005 }) // ≈ 2400 */
export const faultCurrent = (given: {
  readonly voltage: number
  readonly internalResistance: number
}): number => positive('voltage', given.voltage) / positive('internal resistance', given.internalResistance)
