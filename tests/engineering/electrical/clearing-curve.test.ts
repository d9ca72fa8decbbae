import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bendsOf,
  type ClearingCurve,
  clearing,
  clearingCurve,
  largestEnergy,
  usualTolerance,
} from '../../../server/src/engineering/electrical/clearing-curve.ts'
import { ratingInAmbient } from '../../../server/src/engineering/electrical/rating-in-ambient.ts'
import { selectivity } from '../../../server/src/engineering/electrical/selectivity.ts'
import {
  ratingAtLeast,
  ratingAtMost,
  standardRatings,
} from '../../../server/src/engineering/electrical/standard-ratings.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { near, relative } from './network-helpers.ts'
import { badNumbers, exactly } from './outside.ts'

/** Invented, about as steep as that of a fuse of 250 A. */
const fuse = clearingCurve([
  { current: 3000, time: 0.1 },
  { current: 945, time: 100 },
  { current: 6000, time: 0.01 },
])

describe('a curve of a device', () => {
  it('is straight in logarithms between its points: halfway the geometric mean of both', () => {
    const halfway = Math.sqrt(945 * 3000)
    exactly(clearing(fuse, halfway, 0).latest ?? 0, Math.sqrt(100 * 0.1))
    exactly(clearing(fuse, halfway, 0).earliest, Math.sqrt(100 * 0.1))
  })

  it('may be anywhere within its tolerance, 10 % if not known', () => {
    expect(clearing(fuse, 945 * 1.1).latest).toBeCloseTo(100, 9)
    expect(clearing(fuse, 3000 / 1.1).earliest).toBeCloseTo(0.1, 9)
    expect(clearing(fuse, 945).latest).toBeUndefined()
    expect(clearing(fuse, 2000)).toEqual(clearing(fuse, 2000, usualTolerance))
    expect(bendsOf(clearingCurve([{ current: 100, time: 1 }]), 0.25)).toEqual([80, 100, 125])
  })

  it('is not continued: below it the device may never open; above it opens no later than at its last point', () => {
    expect(clearing(fuse, 944, 0)).toEqual({ latest: undefined, earliest: 100 })
    expect(clearing(fuse, 60_000, 0)).toEqual({ latest: 0.01, earliest: 0 })
    // 3 kA of the fuse, once at each end.
    expect(clearing(clearingCurve([{ current: 3000, time: 0.1 }]), 3000, 0)).toEqual({
      latest: 0.1,
      earliest: 0.1,
    })
  })

  it('refuses points that are no curve', () => {
    expect(() => clearingCurve([])).toThrow(OutOfRange)
    expect(() => clearing([], 100)).toThrow(OutOfRange)
    const point = { current: 100, time: 1 }
    expect(() => clearingCurve([point, point])).toThrow('one time for each current')
    expect(() => clearingCurve([point, { current: 200, time: 2 }])).toThrow('must not rise')
    for (const bad of badNumbers) {
      expect(() => clearingCurve([{ current: bad, time: 1 }])).toThrow(OutOfRange)
      expect(() => clearingCurve([{ current: 1, time: bad }])).toThrow(OutOfRange)
      expect(() => clearing(fuse, bad)).toThrow(OutOfRange)
      if (bad !== 0) expect(() => clearing(fuse, 1000, bad)).toThrow(OutOfRange)
    }
  })
})

const anyCurve: fc.Arbitrary<ClearingCurve> = fc
  .array(
    fc.record({
      step: fc.double({ min: 1.01, max: 4, noNaN: true }),
      faster: fc.double({ min: 1, max: 100, noNaN: true }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((steps) => {
    let [current, time] = [100, 1000]
    return steps.map(({ step, faster }) => {
      current *= step
      time /= faster
      return { current, time }
    })
  })
const anyCurrent = fc.double({ min: 50, max: 20_000, noNaN: true })
const anyTolerance = fc.constantFrom(0, 0.05, 0.1, 0.3)

describe('any curve', () => {
  it('opens no later with more current, and the bounds hold what is between the smallest and the largest tolerance', () => {
    fc.assert(
      fc.property(anyCurve, anyCurrent, anyCurrent, anyTolerance, (curve, a, b, tolerance) => {
        const [less, more] = [
          clearing(curve, Math.min(a, b), tolerance),
          clearing(curve, Math.max(a, b), tolerance),
        ]
        expect(more.latest ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(
          (less.latest ?? Number.POSITIVE_INFINITY) * (1 + 1e-9),
        )
        expect(more.earliest).toBeLessThanOrEqual(less.earliest * (1 + 1e-9))
        const exact = clearing(curve, a, 0)
        const wide = clearing(curve, a, tolerance)
        expect(wide.earliest).toBeLessThanOrEqual(exact.earliest * (1 + 1e-9))
        if (wide.latest !== undefined)
          expect(wide.latest).toBeGreaterThanOrEqual((exact.latest ?? Number.NaN) * (1 - 1e-9))
      }),
    )
  })

  it('has its largest energy between two currents where a close look finds it', () => {
    fc.assert(
      fc.property(anyCurve, anyCurrent, anyCurrent, anyTolerance, (curve, a, b, tolerance) => {
        const [least, most] = [Math.min(a, b), Math.max(a, b)]
        const found = largestEnergy(curve, { least, most }, tolerance)
        const looked = Array.from({ length: 301 }, (_, i) => least * (most / least) ** (i / 300)).map(
          (current) => {
            const { latest } = clearing(curve, current, tolerance)
            return latest === undefined ? Number.POSITIVE_INFINITY : current ** 2 * latest
          },
        )
        if (found === undefined) expect(looked[0]).toBe(Number.POSITIVE_INFINITY)
        else {
          expect(Math.max(...looked)).toBeLessThanOrEqual(found * (1 + 1e-9))
          expect(Math.max(...looked)).toBeGreaterThanOrEqual(found * 0.5)
        }
      }),
    )
  })
})

describe('two devices in a row', () => {
  const range = { least: 500, most: 6000 }
  const gG = (rating: number) => ({ rating, class: 'gG' })

  it.each([
    [160, 100, 'yes'],
    [100, 63, 'unknown'],
    [125, 80, 'unknown'],
    [200, 125, 'yes'],
    [80, 100, 'no'],
    [100, 100, 'no'],
    [16, 10, 'unknown'],
  ])('gG %d A before %d A: %s, by 1.6 : 1 (fuse maker’s guide)', (far, close, selective) => {
    expect(selectivity(gG(far), gG(close), range).selective).toBe(selective)
  })

  it('of other classes, or of classes that are not known, are not judged by the ratio', () => {
    for (const [far, close] of [
      [
        { rating: 400, class: 'gG' },
        { rating: 100, class: 'aR' },
      ],
      [
        { rating: 400, class: 'T' },
        { rating: 100, class: 'T' },
      ],
      [{ rating: 400 }, { rating: 100 }],
      [{ rating: 50 }, { rating: 100 }],
    ] as const)
      expect(selectivity(far, close, range)).toEqual({ selective: 'unknown' })
  })

  it('are by their curves if these are apart at all currents, whichever the fault has', () => {
    const near1 = clearingCurve([
      { current: 300, time: 100 },
      { current: 1000, time: 0.1 },
      { current: 9000, time: 0.001 },
    ])
    const far1 = clearingCurve([
      { current: 1200, time: 100 },
      { current: 4000, time: 0.1 },
      { current: 9000, time: 0.02 },
    ])
    const [far, close] = [
      { rating: 400, curve: far1 },
      { rating: 100, curve: near1 },
    ]
    expect(selectivity(far, close, range)).toEqual({ selective: 'yes', by: 'curves' })
    expect(selectivity(close, far, range)).toMatchObject({ selective: 'no', by: 'curves' })
    // Beyond the last point of the far one nothing says that it waits; below the first of the near one nothing says that that opens.
    expect(selectivity(far, close, { least: 500, most: 12_000 })).toEqual({ selective: 'unknown' })
    expect(selectivity(far, close, { least: 200, most: 6000 })).toEqual({ selective: 'unknown' })
  })

  it('are never selective both ways round', () => {
    const any = fc.record({
      rating: fc.double({ min: 10, max: 500, noNaN: true }),
      class: fc.constantFrom('gG', 'aR'),
      curve: anyCurve,
    })
    fc.assert(
      fc.property(any, any, anyCurrent, anyTolerance, (one, other, least, tolerance) => {
        const both = [
          selectivity(one, other, { least, most: 3 * least }, tolerance),
          selectivity(other, one, { least, most: 3 * least }, tolerance),
        ]
        expect(both.filter(({ selective }) => selective === 'yes').length).toBeLessThan(2)
        if (both[0]?.selective === 'yes' && both[0].by === 'curves') expect(both[1]?.selective).toBe('no')
      }),
    )
  })
})

describe('a rating', () => {
  it('falls by 0.5 % for each kelvin above 40 °C (fuse maker’s guide)', () => {
    exactly(ratingInAmbient(100, 40), 100)
    exactly(ratingInAmbient(100, 50), 95)
    exactly(ratingInAmbient(250, 60), 225)
    exactly(ratingInAmbient(100, -20), 100)
    expect(() => ratingInAmbient(100, 200)).toThrow(OutOfRange)
  })

  it('beyond the list is a preferred number', () => {
    expect(ratingAtLeast(631, 'iec')).toEqual({ amps: 800, listed: false })
    expect(ratingAtLeast(1201, 'us')).toEqual({ amps: 1250, listed: false })
    expect(ratingAtLeast(9000, 'iec')).toEqual({ amps: 10_000, listed: false })
    expect(ratingAtMost(1100, 'iec')).toEqual({ amps: 1000, listed: false })
    expect(ratingAtMost(5, 'iec')).toEqual({ amps: 5, listed: false })
    expect(ratingAtMost(0.9, 'us')).toEqual({ amps: 0.8, listed: false })
    expect(ratingAtMost(640, 'iec')).toEqual({ amps: 630, listed: true })
    expect(ratingAtMost(177, 'us')).toEqual({ amps: 175, listed: true })
  })

  it('of the list, next to a number, is beside it and no other is nearer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.constantFrom('iec', 'us'),
        (amps, series) => {
          const [low, high] = [ratingAtMost(amps, series), ratingAtLeast(amps, series)]
          expect(low.amps).toBeLessThanOrEqual(amps * (1 + 1e-9))
          expect(high.amps).toBeGreaterThanOrEqual(amps * (1 - 1e-9))
          // R10: a step is at most 10^0.1, rounded.
          if (!(low.listed || high.listed)) expect(high.amps / low.amps).toBeLessThan(1.3)
          for (const listed of standardRatings[series].amps)
            if (listed > low.amps && listed < high.amps) near(listed, amps, 1e-6 * amps)
          relative(ratingAtLeast(high.amps, series).amps, high.amps, 1e-9)
        },
      ),
    )
  })
})
