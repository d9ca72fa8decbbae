import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { betweenPoints } from '../../server/src/engineering/between-points.ts'

const curve = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.double({ min: -1e6, max: 1e6, noNaN: true })), {
    minLength: 2,
    maxLength: 12,
    selector: ([at]) => at,
  })
  .map((pairs) => pairs.toSorted(([a], [b]) => a - b).map(([at, value]) => ({ at, value })))

describe('between the points of a curve', () => {
  it('goes through each point', () => {
    fc.assert(
      fc.property(curve, (points) => {
        for (const { at, value } of points) expect(betweenPoints(points, at)).toBe(value)
      }),
    )
  })

  it('stays between the two points around it', () => {
    fc.assert(
      fc.property(curve, fc.double({ min: 0, max: 1, noNaN: true }), (points, share) => {
        const [low, high] = [points[0], points[1]]
        if (!low || !high) return
        const found = betweenPoints(points, low.at + share * (high.at - low.at)) ?? Number.NaN
        const slack = 1e-9 * Math.max(Math.abs(low.value), Math.abs(high.value), 1)
        expect(found).toBeGreaterThanOrEqual(Math.min(low.value, high.value) - slack)
        expect(found).toBeLessThanOrEqual(Math.max(low.value, high.value) + slack)
      }),
    )
  })

  it('says nothing beyond its ends', () => {
    const points = [
      { at: 1, value: 10 },
      { at: 2, value: 20 },
    ]
    expect(betweenPoints(points, 0.99)).toBeUndefined()
    expect(betweenPoints(points, 2.01)).toBeUndefined()
    expect(betweenPoints([], 1)).toBeUndefined()
    expect(betweenPoints(points, Number.NaN)).toBeUndefined()
  })
})
