import fc from 'fast-check'
import { expect, it } from 'vitest'
import { isAnyLater, isLater, latestOf } from '../../../server/src/areas/common/days.ts'

const two = (n: number): string => String(n).padStart(2, '0')
const day = fc.integer({ min: 1, max: 4 }).map((n) => `2026-03-${two(n)}`)
const time = fc
  .tuple(fc.constantFrom(0, 1, 12, 23), fc.constantFrom(0, 30))
  .map(([hours, minutes]) => `T${two(hours)}:${two(minutes)}`)
const zone = fc.constantFrom('', 'Z', '+14:00', '-11:00')
const date = fc.oneof(
  day,
  fc.tuple(day, time, zone).map((parts) => parts.join('')),
)

it('says the same of many dates as asking each', () => {
  fc.assert(
    fc.property(fc.array(date, { maxLength: 6 }), date, (dates, than) => {
      expect(isAnyLater(latestOf(dates), than)).toBe(dates.some((one) => isLater(one, than)))
    }),
    { numRuns: 2000 },
  )
})
