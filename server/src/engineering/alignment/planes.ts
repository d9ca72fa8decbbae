import type { Uncertain } from '../../quantity/uncertainty.ts'

/** One thing seen in two planes: from the side (vertical: + up) and from above (horizontal: + to
 * starboard). */
export type InPlanes<T> = { readonly vertical: T; readonly horizontal: T }

/** The same done in both planes.
 * @example inBothPlanes((plane) => plane.length) // { vertical: 8, horizontal: 10 } */
export const inBothPlanes = <T>(of: (plane: keyof InPlanes<T>) => T): InPlanes<T> => ({
  vertical: of('vertical'),
  horizontal: of('horizontal'),
})

/** What an axis is off by in one plane: offset (m) at the coupling, slope (rad). */
export type AxisError = { readonly offset: number; readonly slope: number }

/** Covariance of [c, vertical, horizontal]: rows and columns in that order. */
export type Covariance = readonly (readonly number[])[]

/** Variance of j · b for unknowns b of covariance C.
 * @example variance([1, 1], [[1, 0], [0, 1]]) // 2 */
export const variance = (j: readonly number[], C: Covariance): number =>
  Math.max(
    0,
    C.reduce((sum, r, i) => sum + (j[i] ?? 0) * r.reduce((s, v, k) => s + v * (j[k] ?? 0), 0), 0),
  )

/** Unknown number `i` of an estimate with its standard uncertainty.
 * @example pick([5, 7], [[1, 0], [0, 4]], 1) // { value: 7, standard: 2 } */
export const pick = (values: readonly number[], C: Covariance, i: number): Uncertain => ({
  value: values[i] ?? 0,
  standard: Math.sqrt(Math.max(0, C[i]?.[i] ?? 0)),
})
