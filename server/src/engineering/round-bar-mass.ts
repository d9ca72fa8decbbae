import { positive } from './guard.ts'

/** Mass of a solid round bar, kg, with `diameter` and `length` (m) and `density` (kg/m³); each > 0, else OutOfRange. Source: definition.
 * @example roundBarMass({ diameter: 0.05, length: 1, density: 7850 }) // ≈ 15.41 */
export const roundBarMass = (given: {
  readonly diameter: number
  readonly length: number
  readonly density: number
}): number =>
  (Math.PI / 4) *
  positive('diameter', given.diameter) ** 2 *
  positive('length', given.length) *
  positive('density', given.density)
