import { reaches } from './compare.ts'

/** The rows of a table on either side of a value. Both are the same row where the value has one. */
export interface RowsAround<R> {
  /** The last row that is not above the value; undefined below the smallest row. */
  readonly under: R | undefined
  /** The first row that is not below the value; undefined above the largest row. */
  readonly over: R | undefined
}

/** Every lookup in a table of this folder goes through here, so that what happens beyond its rows is written at each. `rows` rise by `sizeOf`.
 * @example rowsAround([1, 2, 4], (row) => row, 3) // { under: 2, over: 4 } */
export const rowsAround = <R>(
  rows: readonly R[],
  sizeOf: (row: R) => number,
  value: number,
): RowsAround<R> => ({
  under: rows.findLast((row) => reaches(value, sizeOf(row))),
  over: rows.find((row) => reaches(sizeOf(row), value)),
})
