// Calendar and clock arithmetic; the forms are those of ISO 8601-1.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { between, isLater } from '../../../server/src/areas/common/days.ts'

const hours = (from: string, to: string) => between(from, to) / 3_600_000

describe('between two dates', () => {
  it.each([
    ['2026-03-18', '2026-03-19', 24],
    ['2026-03-18T20:00', '2026-03-19T08:00', 12],
    ['2026-03-18T20:00:30', '2026-03-18T20:01', 1 / 120],
    ['2026-03-18T20:00+02:00', '2026-03-18T20:00Z', 2], // 18:00 and 20:00 UTC
    ['2026-03-18T23:30-05:00', '2026-03-19T05:00Z', 0.5],
    ['2026-03-18', '2026-03-18T23:00', 0], // one has no time: the day counts
    ['2026-03-18T20:00', '2026-03-18T21:00Z', 1], // one has no zone: the clock counts
    ['2024-02-28', '2024-03-01', 48], // a leap year
  ])('from %s to %s are %d hours', (from, to, expected) => {
    expect(hours(from, to)).toBeCloseTo(expected, 9)
  })

  it('neither of two is both later and earlier', () => {
    const time = fc.constantFrom('', 'T08:00', 'T17:30:15', 'T08:00Z', 'T23:00+10:00')
    const date = fc.tuple(fc.constantFrom('2026-03-18', '2026-03-19'), time).map((parts) => parts.join(''))
    fc.assert(
      fc.property(date, date, (a, b) => {
        expect(isLater(a, b) && isLater(b, a)).toBe(false)
        expect(isLater(a, a)).toBe(false)
      }),
    )
  })
})
