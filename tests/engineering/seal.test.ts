import { describe, expect, it } from 'vitest'
import { compression, squeezedAsWanted } from '../../server/src/engineering/seal.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

const mm = (value: number): number => value / 1000

describe('bellows seal', () => {
  it('is squeezed by free length less fitted length', () => {
    expect(compression({ free: mm(148), fitted: mm(122) })).toBeCloseTo(mm(26), 12)
    expect(compression({ free: mm(148), fitted: mm(150) })).toBeCloseTo(mm(-2), 12)
  })

  it.each([Number.NaN, 0, -0.1, 148, Number.POSITIVE_INFINITY])('refuses a length of %s m', (bad) => {
    expect(() => compression({ free: bad, fitted: 0.122 })).toThrow(OutOfRange)
    expect(() => compression({ free: 0.148, fitted: bad })).toThrow(OutOfRange)
  })

  it.each([
    [{ low: mm(24), high: mm(29) }, 24, true],
    [{ low: mm(24), high: mm(29) }, 23.9, false],
    [{ high: mm(29) }, 29, true],
    [{ high: mm(29) }, 0, false],
    [{ low: 0, high: mm(29) }, 0, true],
  ])('where %o m is wanted, %d mm is as wanted: %s', (wanted, squeeze, is) => {
    expect(squeezedAsWanted(mm(squeeze), wanted)).toBe(is)
  })
})
