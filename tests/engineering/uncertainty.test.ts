import { describe, expect, it } from 'vitest'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { exactly, expanded, plus, rectangular } from '../../server/src/quantity/uncertainty.ts'

describe('uncertainty', () => {
  it('of a value inside a band of width w is w/√12: variance a²/3 with a = w/2 (JCGM 100 4.3.7)', () => {
    expect(rectangular(0.02) ** 2).toBeCloseTo(0.01 ** 2 / 3, 12)
    // JCGM 100 F.2.2.1: resolution δx gives u = 0.29 δx.
    expect(rectangular(1)).toBeCloseTo(0.29, 2)
  })
  it('expanded is twice the standard (JCGM 100 6.3.3, k = 2)', () => {
    expect(expanded({ value: 5, standard: 0.3 })).toBeCloseTo(0.6, 12)
    expect(expanded(exactly(5))).toBe(0)
  })
  it('of a sum is the root of the sum of squares (JCGM 100 5.1.2)', () => {
    expect(plus({ value: 1, standard: 3 }, { value: -4, standard: 4 })).toEqual({ value: -3, standard: 5 })
  })
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a step of %d is refused', (bad) => {
    expect(() => rectangular(bad)).toThrow(OutOfRange)
  })
})
