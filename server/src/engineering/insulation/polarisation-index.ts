import { OutOfRange } from '../../quantity/out-of-range.ts'
import { inRange } from '../guard.ts'

/** Above this, Ω, the index says nothing: the current is too small to be read well. Source: IEEE 43, in a quiz of the test trade and a manual of an instrument. */
export const indexMeaningless = 5e9

/** Polarisation index: resistance after 10 minutes (`late`, ≥ 0) over that after one (`early`, > 0), both Ω, else OutOfRange. A sound, dry winding has 2 or
 * more; below 1 it is wet or dirty. Source: IEEE 43.
 * @example polarisationIndex({ early: 180e6, late: 450e6 }) // 2.5 */
export function polarisationIndex(given: { readonly early: number; readonly late: number }): number {
  const early = inRange('resistance after 1 min (ohm)', given.early, 0, 1e15)
  if (early < 1e-3) throw new OutOfRange('resistance after 1 min must be above zero')
  return inRange('resistance after 10 min (ohm)', given.late, 0, 1e15) / early
}

/** Least polarisation index of a winding. Source: IEEE 43: 2.0, for class A insulation 1.5.
 * @example indexMinimum('F') // 2 */
export const indexMinimum = (thermalClass: string | undefined): number => (thermalClass === 'A' ? 1.5 : 2)
