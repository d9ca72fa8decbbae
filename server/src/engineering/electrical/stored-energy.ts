import { positive } from '../guard.ts'

/** Energy that a capacitor holds, J: ½CV², with `capacitance` (F) at `voltage` (V); both > 0, else OutOfRange. Source: definition.
 * @example storedEnergy({ capacitance: 0.001, voltage: 800 }) // 320 */
export const storedEnergy = (given: { readonly capacitance: number; readonly voltage: number }): number =>
  (positive('capacitance', given.capacitance) * positive('voltage', given.voltage) ** 2) / 2
