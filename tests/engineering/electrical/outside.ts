import { expect } from 'vitest'

/** The same formula in full precision: relative 1e-5. */
export const exactly = (actual: number, expected: number): void =>
  expect(Math.abs(actual / expected - 1), `${actual} against exact ${expected}`).toBeLessThanOrEqual(1e-5)

/** A figure as a source prints it, given as text: within one unit of its last digit. */
export function asPrinted(actual: number, printed: string): void {
  const decimals = printed.split('.')[1]?.length ?? 0
  const unit = 10 ** -decimals
  expect(Math.abs(actual - Number(printed)), `${actual} against printed ${printed}`).toBeLessThanOrEqual(
    unit * (1 + 1e-9),
  )
}

/** What no function of the kernel may take for a number above zero. */
export const badNumbers = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -1, 1e15]
