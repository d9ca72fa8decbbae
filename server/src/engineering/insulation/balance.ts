import { OutOfRange } from '../../quantity/out-of-range.ts'
import { inRange } from '../guard.ts'

/** Imbalance of values that should be the same, such as the resistances or no-load currents of three phases (all ≥ 0, one unit, measured together): largest
 * difference from their mean, as a share of it. 0 where all are the same. OutOfRange for fewer than two values, or where all are zero. Source: NEMA MG 1, definition of
 * unbalance (from memory).
 * @example imbalance([14.2, 14.3, 14.1]) // ≈ 0.00704 */
export function imbalance(values: readonly number[]): number {
  for (const value of values) inRange('value', value, 0, 1e12)
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  if (values.length < 2 || !(mean > 0)) throw new OutOfRange('two or more values, not all zero, are needed')
  return Math.max(...values.map((value) => Math.abs(value - mean))) / mean
}
