// General industry alignment tolerance table, short flexible couplings, acceptable: offset in mm, face gap in mm on 100 mm.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { speedLimits, tableEnds } from '../../server/src/engineering/alignment/speed-limits.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

it.each([
  [750, 0.19, 0.13],
  [1500, 0.09, 0.07],
  [3000, 0.06, 0.04],
  [6000, 0.03, 0.03],
])('at %s turns a minute', (speed, offset, gap) => {
  const limits = speedLimits(speed)
  expect(limits.offset).toBeCloseTo(offset / 1000, 9)
  expect(limits.gapPerDiameter * 100).toBeCloseTo(gap, 9)
  expect(limits.beyondTable).toBe(false)
})

it('between two rows is the stricter, below the first the first', () => {
  expect(speedLimits(1501)).toEqual(speedLimits(3000))
  expect(speedLimits(400)).toEqual(speedLimits(750))
  expect(speedLimits(0.2)).toEqual(speedLimits(750))
})

it('beyond the table is its last row, and that is told', () => {
  expect(tableEnds).toBe(6000)
  expect(speedLimits(6001)).toEqual({ ...speedLimits(6000), beyondTable: true })
})

// Common practice, no source: a faster coupling is never allowed more.
it('is never looser at a higher speed', () => {
  const speed = fc.double({ min: 1e-3, max: 60_000, noNaN: true })
  fc.assert(
    fc.property(speed, speed, (a, b) => {
      const [slow, fast] = [speedLimits(Math.min(a, b)), speedLimits(Math.max(a, b))]
      expect(fast.offset).toBeLessThanOrEqual(slow.offset)
      expect(fast.gapPerDiameter).toBeLessThanOrEqual(slow.gapPerDiameter)
    }),
  )
})

it.each([0, -1, Number.POSITIVE_INFINITY, Number.NaN])('%s turns a minute is refused', (speed) => {
  expect(() => speedLimits(speed)).toThrow(OutOfRange)
})
