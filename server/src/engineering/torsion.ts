import { inRange, positive } from './guard.ts'

/** Torque (N·m) of `power` (W) at `speed` (rad/s); both > 0, else OutOfRange. Source: definition of power.
 * @example torqueOf({ power: 15e3, speed: 157.0796 }) // ≈ 95.493 */
export const torqueOf = ({ power, speed }: { readonly power: number; readonly speed: number }): number =>
  positive('power', power) / positive('speed', speed)

/** Shear stress (Pa) at the surface of a solid round shaft of `diameter` (m) under `torque` (N·m, up to 1e12); both > 0, else OutOfRange: 16 T / (π d³).
 * Source: torsion of a round bar, any text on strength of materials.
 * @example shearStress({ torque: 100, diameter: 0.02 }) // ≈ 6.36620e7 */
export const shearStress = (given: { readonly torque: number; readonly diameter: number }): number =>
  (16 * inRange('torque', given.torque, 1e-12, 1e12)) / (Math.PI * positive('diameter', given.diameter) ** 3)
