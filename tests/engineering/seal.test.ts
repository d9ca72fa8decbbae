import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compression, compressionUnderThrust, judgeCompression } from '../../server/src/engineering/seal.ts'

const mm = (value: number): number => value / 1000

describe('bellows seal', () => {
  it('is squeezed by free length less fitted length', () => {
    expect(compression({ free: mm(148), fitted: mm(122) })).toBeCloseTo(mm(26), 12)
    expect(compression({ free: mm(148), fitted: mm(150) })).toBeCloseTo(mm(-2), 12)
  })

  // A maker's band of 26 mm +3/-2 mm, invented: the ends, given in mm or in inches, are inside.
  it.each([
    [18, 'too-little'],
    [-2, 'too-little'],
    [23.99, 'too-little'],
    [24, 'within'],
    [26, 'within'],
    [29, 'within'],
    [29.01, 'too-much'],
  ])('squeezed by %s mm of 26 +3/-2 mm: %s', (squeeze, verdict) => {
    const fitted = mm(148) - mm(squeeze)
    const band = { target: mm(26), plus: mm(3), minus: mm(2) }
    expect(judgeCompression(compression({ free: mm(148), fitted }), band)).toBe(verdict)
  })

  it('calls a squeeze within exactly when it lies between the ends', () => {
    const size = fc.integer({ min: 1, max: 100 })
    const slack = fc.integer({ min: 0, max: 50 })
    fc.assert(
      fc.property(size, size, slack, slack, (squeeze, target, plus, minus) => {
        const verdict = judgeCompression(mm(squeeze), {
          target: mm(target),
          plus: mm(plus),
          minus: mm(minus),
        })
        const inside = squeeze <= target + plus && squeeze >= target - minus
        expect(verdict === 'within').toBe(inside)
      }),
    )
  })

  // Thrust ahead moves the shaft forward, and the rotor on it away from the bellows.
  it('loses what the shaft travels forward, and gains what it travels aft', () => {
    expect(compressionUnderThrust({ stopped: mm(26), travel: mm(2) })).toBeCloseTo(mm(24), 12)
    expect(compressionUnderThrust({ stopped: mm(26), travel: mm(-2) })).toBeCloseTo(mm(28), 12)
  })

  it.each([Number.NaN, 0, -0.1, 148, Number.POSITIVE_INFINITY])('refuses a length of %s m', (bad) => {
    expect(() => compression({ free: bad, fitted: 0.122 })).toThrow(RangeError)
    expect(() => compression({ free: 0.148, fitted: bad })).toThrow(RangeError)
    expect(() => judgeCompression(0.026, { target: bad, plus: 0, minus: 0 })).toThrow(RangeError)
  })

  it.each([Number.NaN, 148, Number.NEGATIVE_INFINITY])(
    'refuses a squeeze, travel or tolerance of %s m',
    (bad) => {
      const band = { target: 0.026, plus: 0.003, minus: 0.002 }
      expect(() => judgeCompression(bad, band)).toThrow(RangeError)
      expect(() => judgeCompression(0.026, { ...band, plus: bad })).toThrow(RangeError)
      expect(() => judgeCompression(0.026, { ...band, minus: bad })).toThrow(RangeError)
      expect(() => compressionUnderThrust({ stopped: bad, travel: 0.001 })).toThrow(RangeError)
      expect(() => compressionUnderThrust({ stopped: 0.026, travel: bad })).toThrow(RangeError)
    },
  )
})
