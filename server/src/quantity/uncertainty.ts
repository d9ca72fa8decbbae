import { OutOfRange } from './out-of-range.ts'
/** A value with its standard uncertainty (one standard deviation), both in the same SI unit. */
export type Uncertain = { readonly value: number; readonly standard: number }

/** A value taken as free of error.
 * @example exactly(0.002) // { value: 0.002, standard: 0 } */
export const exactly = (value: number): Uncertain => ({ value, standard: 0 })

/** Expanded uncertainty U = k u with coverage factor k = 2, in the unit of the value: about 95 % when u
 * comes from the gauge. Source: JCGM 100 (GUM) 6.2 and 6.3.
 * @example expanded({ value: 0.26, standard: 0.01 }) // 0.02 */
export const expanded = (u: Uncertain): number => 2 * u.standard

/** Standard uncertainty of a value read to a step, in the unit of the step (> 0 and finite, else
 * OutOfRange): step / √12. It holds for rounding to the nearest step and for the largest feeler that goes
 * in alike: the true value lies in a band one step wide. Source: JCGM 100 (GUM) F.2.2.1.
 * @example rectangular(0.02) // ≈ 0.0057735 */
export function rectangular(step: number): number {
  if (!(step > 0 && Number.isFinite(step)))
    throw new OutOfRange(`gauge step: expected a number above 0, got ${step}`)
  return step / Math.sqrt(12)
}

/** Sum of two values whose errors are independent, in their common unit.
 * @example plus({ value: 1, standard: 3 }, { value: 2, standard: 4 }) // { value: 3, standard: 5 } */
export const plus = (a: Uncertain, b: Uncertain): Uncertain => ({
  value: a.value + b.value,
  standard: Math.hypot(a.standard, b.standard),
})
