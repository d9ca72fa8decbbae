// General industry alignment tolerance table, short flexible couplings, acceptable: offset in mm, face gap in mm on 100 mm.
import { expect, it } from 'vitest'
import { speedLimits } from '../../server/src/engineering/alignment/speed-limits.ts'

it.each([
  [750, 0.19, 0.13],
  [1500, 0.09, 0.07],
  [3000, 0.06, 0.04],
  [6000, 0.03, 0.03],
])('at %s turns a minute', (speed, offset, gap) => {
  const limits = speedLimits(speed)
  expect(limits.offset).toBeCloseTo(offset / 1000, 9)
  expect(limits.gapPerDiameter * 100).toBeCloseTo(gap, 9)
})

it('between two rows is the stricter, below the first the first', () => {
  expect(speedLimits(1501)).toEqual(speedLimits(3000))
  expect(speedLimits(400)).toEqual(speedLimits(750))
})

it.each([0, -1, 6001, Number.NaN])('%s turns a minute is refused', (speed) => {
  expect(() => speedLimits(speed)).toThrow(RangeError)
})
