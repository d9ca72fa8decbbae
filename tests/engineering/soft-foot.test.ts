import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { softFeet } from '../../server/src/engineering/alignment/soft-foot.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

describe('soft feet', () => {
  const lifts = (...um: number[]) => um.map((v, i) => ({ name: `foot ${i + 1}`, lift: v * 1e-6 }))
  it('none when every lift is within the limit (0.06 mm: general industry alignment tolerance table)', () => {
    expect(softFeet(lifts(50, 60, 20, 0), 60e-6, 20e-6)).toEqual({ soft: [], alike: false })
  })
  it('two feet across the corner: all named, one raised, then read again', () => {
    const { soft, missing } = softFeet(lifts(127, 51, 120, 51), 60e-6, 20e-6)
    expect(soft).toEqual(['foot 1', 'foot 3'])
    expect(missing).toEqual({ name: 'foot 1', height: expect.closeTo(76e-6, 12) })
  })
  // The median of an even count is the mean of the two in the middle (NIST/SEMATECH e-Handbook, 1.3.5.1).
  it('of five feet the four others are held against by the mean of the middle two', () => {
    const { missing } = softFeet(lifts(127, 60, 50, 40, 30), 60e-6, 20e-6)
    expect(missing).toEqual({ name: 'foot 1', height: expect.closeTo(82e-6, 12) })
  })
  it('all rising alike: the bed springs, no shim helps', () => {
    expect(softFeet(lifts(100, 100, 100, 100), 60e-6, 20e-6)).toEqual({
      soft: ['foot 1', 'foot 2', 'foot 3', 'foot 4'],
      alike: true,
    })
  })
  // Each lift is known to half a step of the gauge (JCGM 100, F.2.2.1), so two that differ by a step may be the same.
  it('alike within a step of the gauge is alike', () => {
    const as = [120, 150, 130, 140] as const
    expect(softFeet(lifts(...as), 60e-6, 20e-6)).toMatchObject({ alike: true })
    expect(softFeet(lifts(...as), 60e-6, 20e-6).missing).toBeUndefined()
    expect(softFeet(lifts(...as), 60e-6, 10e-6)).toMatchObject({
      alike: false,
      missing: { name: 'foot 2', height: expect.closeTo(20e-6, 12) },
    })
  })
  it('several that rise as far, and one that does not: none stands out, and they are not alike', () => {
    const found = softFeet(lifts(130, 120, 120, 20), 60e-6, 20e-6)
    expect(found).toEqual({ soft: ['foot 1', 'foot 2', 'foot 3'], alike: false })
  })
  it('never asks for less than the gauge can tell, nor for more than the foot rises', () => {
    const lift = fc.integer({ min: 0, max: 400 })
    fc.assert(
      fc.property(
        fc.array(lift, { minLength: 3, maxLength: 8 }),
        fc.integer({ min: 1, max: 50 }),
        (all, step) => {
          const { missing, alike } = softFeet(lifts(...all), 60e-6, step * 1e-6)
          if (!missing) return
          expect(alike).toBe(false)
          expect(missing.height).toBeGreaterThan(step * 1e-6)
          expect(missing.height).toBeLessThanOrEqual(Math.max(...all) * 1e-6 + 1e-12)
        },
      ),
    )
  })
  it.each([
    [() => softFeet(lifts(1, 2), 60e-6, 20e-6)],
    [() => softFeet(lifts(1, 2, -3), 60e-6, 20e-6)],
    [() => softFeet(lifts(1, 2, Number.NaN), 60e-6, 20e-6)],
    [() => softFeet(lifts(1, 2, 1e6), 60e-6, 20e-6)],
    [() => softFeet(lifts(1, 2, 3), 0, 20e-6)],
    [() => softFeet(lifts(1, 2, 3), Number.NaN, 20e-6)],
    [() => softFeet(lifts(1, 2, 3), 60e-6, -1e-6)],
    [() => softFeet(lifts(1, 2, 3), 60e-6, Number.NaN)],
  ])('bad lifts or limits are refused: %s', (bad) => {
    expect(bad).toThrow(OutOfRange)
  })
})

it('a lift at the limit is allowed: "0.06 mm at any speed" is the most, not the least of what is too much', () => {
  const lifts = [60e-6, 20e-6, 20e-6, 20e-6].map((lift, i) => ({ name: `foot ${i}`, lift }))
  expect(softFeet(lifts, 60e-6, 1e-5).soft).toEqual([])
  expect(softFeet([{ name: 'more', lift: 61e-6 }, ...lifts.slice(1)], 60e-6, 1e-5).soft).toEqual(['more'])
})
