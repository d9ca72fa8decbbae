// What the larger pieces stand on, each against a closed form or the text of its source.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { anyOf, between, stepHeights } from '../../server/src/engineering/adjuster-heights.ts'
import { atOneStation, oneStation } from '../../server/src/engineering/alignment/feet.ts'
import { provableShare } from '../../server/src/engineering/alignment/goal.ts'
import { fitHarmonic } from '../../server/src/engineering/alignment/harmonic.ts'
import { measured, tiny, walkHeights } from '../../server/src/engineering/alignment/height-walk.ts'
import { estimator, leastSquares } from '../../server/src/engineering/alignment/least-squares.ts'
import { pick, variance } from '../../server/src/engineering/alignment/planes.ts'
import { slidesOf } from '../../server/src/engineering/alignment/slides.ts'
import { stationsOf } from '../../server/src/engineering/alignment/stations.ts'
import { reaches, same } from '../../server/src/engineering/compare.ts'
import {
  bestInsulationC,
  isoTableA1,
  readTable,
  usTable5,
} from '../../server/src/engineering/electrical/ampacity-tables.ts'
import { machinerySpaceAmbientC, openAmbientC } from '../../server/src/engineering/electrical/derating.ts'
import { iec60228 } from '../../server/src/engineering/electrical/iec-60228.ts'
import { carriesLoad, leastRating } from '../../server/src/engineering/electrical/protection.ts'
import {
  coordinate,
  fraction,
  inRange,
  positive,
  size,
  temperature,
  uncertain,
  whole,
} from '../../server/src/engineering/guard.ts'
import { packSums } from '../../server/src/engineering/shim-packs.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { ok } from './alignment-helpers.ts'

const value = fc.double({ min: -10, max: 10, noNaN: true })
const standard = fc.double({ min: 0.1, max: 10, noNaN: true })

describe('least squares', () => {
  // Weighted mean: Σ w y / Σ w with w = 1/u², its variance 1/Σ w (any text on combining measurements).
  it('of one unknown are the weighted mean', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(value, standard), { minLength: 1, maxLength: 8 }), (measured) => {
        const w = measured.map(([, u]) => 1 / u ** 2)
        const total = w.reduce((sum, one) => sum + one, 0)
        const mean = measured.reduce((sum, [y], i) => sum + y * (w[i] ?? 0), 0) / total
        const found = leastSquares(
          measured.map(() => [1]),
          measured.map(([y]) => y),
          measured.map(([, u]) => u),
          { weighted: true },
        )
        expect(found.values[0]).toBeCloseTo(mean, 8)
        expect(found.covariance[0]?.[0]).toBeCloseTo(1 / total, 8)
      }),
    )
  })

  // Straight line: slope Sxy/Sxx, through the middle of the points (normal equations).
  it('of a straight line are Sxy over Sxx, and go through the middle', () => {
    const xs = [0.1, 0.25, 0.4, 0.9]
    const middle = xs.reduce((sum, x) => sum + x, 0) / xs.length
    const line = estimator(
      xs.map((x) => [1, x]),
      xs.map(() => 1),
    )
    fc.assert(
      fc.property(fc.array(value, { minLength: 4, maxLength: 4 }), (ys) => {
        const mean = ys.reduce((sum, y) => sum + y, 0) / 4
        const slope =
          xs.reduce((sum, x, i) => sum + (x - middle) * ((ys[i] ?? 0) - mean), 0) /
          xs.reduce((sum, x) => sum + (x - middle) ** 2, 0)
        const { values } = line(ys, [1, 1, 1, 1])
        expect(values[1]).toBeCloseTo(slope, 8)
        expect((values[0] ?? 0) + slope * middle).toBeCloseTo(mean, 8)
      }),
    )
  })
})

// JCGM 100 (GUM), 5.2.2, equation 13: u² = Σ Σ c_i c_j u(x_i, x_j).
it('variance is the law of propagation of uncertainty', () => {
  expect(
    variance(
      [2, 3],
      [
        [4, 1],
        [1, 9],
      ],
    ),
  ).toBe(2 * 2 * 4 + 2 * (2 * 3 * 1) + 3 * 3 * 9)
  expect(
    pick(
      [5, 7],
      [
        [4, 1],
        [1, 9],
      ],
      1,
    ),
  ).toEqual({ value: 7, standard: 3 })
})

// Equal angles all round: the first term of the Fourier series, p = 2/n Σ v cos a.
it('a wave fitted at equal angles is the first Fourier term', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 3, maxLength: 12 }), (all) => {
      const readings = all.map((mm, i) => ({ angle: (i * 2 * Math.PI) / all.length, value: mm / 1000 }))
      const term = (wave: (a: number) => number) =>
        (2 / all.length) * readings.reduce((sum, r) => sum + r.value * wave(r.angle), 0)
      const [c, p, q] = ok(fitHarmonic(readings, 2e-5)).values
      expect(c).toBeCloseTo(readings.reduce((sum, r) => sum + r.value, 0) / all.length, 10)
      expect(p).toBeCloseTo(term(Math.cos), 10)
      expect(q).toBeCloseTo(term(Math.sin), 10)
    }),
  )
})

it('feet less than a millimetre apart stand at one station', () => {
  expect(oneStation).toBe(1e-3)
  expect([atOneStation([]), atOneStation([0.2, 0.2009]), atOneStation([0.2, 0.2011])]).toEqual([
    true,
    true,
    false,
  ])
})

// ISO 14253-1: within is proved when value + U stays inside. A result at the provable share, found larger by the root sum of squares of both
// U (JCGM 100, 5.1.2), is proved just so.
it('a result at the provable share is just proved within', () => {
  const u = fc.double({ min: 0, max: 0.02, noNaN: true })
  fc.assert(
    fc.property(u, u, fc.double({ min: 0.05, max: 1, noNaN: true }), (now, next, limit) => {
      const share = provableShare({ value: 0.3, standard: now }, { value: 0, standard: next }, limit)
      expect(share * limit + Math.hypot(2 * now, 2 * next) + 2 * next).toBeCloseTo(limit, 10)
    }),
  )
})

it('offset and slope count by the greater share, or by both together (Pythagoras)', () => {
  const [off, across] = [
    { offset: 0.3, slope: 0 },
    { offset: 0.4, slope: 1.2 },
  ]
  expect(measured('used', off, across)).toBeCloseTo(1.2, 12)
  expect(measured('away', off, across)).toBeCloseTo(1.3, 12)
})

it('heights of any adjuster are the nearest of each', () => {
  const heights = between(anyOf([stepHeights(0.003), stepHeights(0.002)]), -0.005, 0.009)
  expect([0.0025, 0.0041, 0.0061, 0.0091].map((at) => heights.from(at))).toEqual([
    0.003,
    0.006,
    0.008,
    undefined,
  ])
  expect([0.0025, -0.0031, -0.0041].map((at) => heights.upTo(at))).toEqual([0.002, -0.004, undefined])
})

describe('stations', () => {
  const feet = [0.6, 0.2, 0.2004, 0.4].map((x, i) => ({ name: `${i}`, x, y: 0, heights: stepHeights(1e-4) }))
  const stations = stationsOf(feet, { left: 100 })
  it('are counted from aft, feet within a millimetre at one', () => {
    expect(stations.map((station) => station.feet)).toEqual([[1, 2], [3], [0]])
    expect(stations[1]?.share).toBeCloseTo(0.5, 12)
  })
  // A station between the ends carries nothing. All feet raised alike raise the axis and do not tilt it.
  it('between the ends do nothing to the axis', () => {
    expect(stations[1]?.per).toEqual({ offset: 0, slope: 0 })
    expect(stations[0]?.per.slope).toBeCloseTo(-1 / 0.4, 9)
    expect(stations[2]?.per.offset).toBeCloseTo(-0.2 / 0.4, 9)
  })
  it('raised together raise the axis by as much', () => {
    expect(stations.reduce((sum, { per }) => sum + per.offset, 0)).toBeCloseTo(1, 9)
    expect(stations.reduce((sum, { per }) => sum + per.slope, 0)).toBeCloseTo(0, 9)
  })
})

describe('the walk over pairs of heights', () => {
  const walk = fc.record({
    still: fc.record({ offset: value, slope: value }),
    across: fc.record({
      offset: fc.double({ min: 0, max: 2, noNaN: true }),
      slope: fc.double({ min: 0, max: 2, noNaN: true }),
    }),
    lever: fc.double({ min: 0.2, max: 3, noNaN: true }),
    measure: fc.constantFrom('used' as const, 'away' as const),
    low: fc.integer({ min: -12, max: 0 }),
    high: fc.integer({ min: 0, max: 12 }),
  })
  it('meets the best of all pairs, and stops where none is better (every pair, one by one)', () => {
    fc.assert(
      fc.property(walk, ({ still, across, lever, measure, low, high }) => {
        const leaves = { still, aft: { offset: 1 + lever, slope: -1 }, fore: { offset: -lever, slope: 1 } }
        const at = (a: number, f: number) =>
          measured(
            measure,
            { offset: still.offset + (1 + lever) * a - lever * f, slope: still.slope - a + f },
            across,
          )
        const steps = Array.from({ length: high - low + 1 }, (_, i) => low + i)
        const every = steps.flatMap((a) => steps.map((f) => at(a / 10, f / 10)))
        const heights = stepHeights(0.1, { up: high / 10, down: -low / 10 })
        let best = Number.MAX_VALUE
        walkHeights(
          { leaves, across, measure, aft: heights, fore: heights, between: [] },
          () => best - tiny,
          (a, f) => {
            best = Math.min(best, at(a, f))
            return undefined
          },
        )
        expect(best).toBeCloseTo(Math.min(...every), 8)
      }),
      { numRuns: 500 },
    )
  })
})

describe('slides', () => {
  const error = { offset: 1e-3, slope: 2e-3 }
  it('without holes in the way are none, or the whole correction -(o + t x)', () => {
    const [none, whole, ...more] = slidesOf([{ x: 0.2 }, { x: 0.6 }], error, 1e-3)
    expect(none).toEqual({ moves: [0, 0], left: error })
    expect(whole?.moves[0]).toBeCloseTo(-1.4e-3, 12)
    expect(whole?.moves[1]).toBeCloseTo(-2.2e-3, 12)
    expect(more).toEqual([])
  })
  it('never take a foot past its hole, and leave what they say (line through both feet)', () => {
    const room = fc.double({ min: 0, max: 2e-3, noNaN: true })
    fc.assert(
      fc.property(room, room, (aft, fore) => {
        const feet = [
          { x: 0.2, sideways: aft },
          { x: 0.6, sideways: fore },
        ]
        for (const { moves, left } of slidesOf(feet, error, 1e-3))
          feet.forEach(({ x, sideways }, i) => {
            expect(Math.abs(moves[i] ?? 0)).toBeLessThanOrEqual(sideways + 2e-9)
            expect(left.offset + left.slope * x).toBeCloseTo(
              error.offset + error.slope * x + (moves[i] ?? 0),
              7,
            )
          })
      }),
    )
  })
})

it('packs of one shim are up to four of it; of n thicknesses, up to C(n + 4, 4) sums (combinations with repetition)', () => {
  expect([...Array.from(packSums([1e-4]))]).toEqual([0, 1e5, 2e5, 3e5, 4e5])
  // Powers of five: no two packs are alike.
  expect(packSums([1, 5, 25, 125, 625].map((t) => t * 1e-6))).toHaveLength((9 * 8 * 7 * 6) / 24)
})

describe('tables as printed', () => {
  it('are for air of 30 °C, and 50 °C in a machinery space (33 CFR 183.425 Table 5 and its note 1)', () => {
    expect([openAmbientC, machinerySpaceAmbientC]).toEqual([30, 50])
  })

  const awg = (n: number) => (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - n) / 39)) ** 2
  // 33 CFR 183.425 Table 5, cells read in the law.
  it.each([
    [18, 60, 10],
    [10, 75, 40],
    [8, 80, 70],
    [4, 90, 135],
    [2, 105, 210],
    [0, 125, 305],
    [-3, 200, 510],
  ])('%i AWG at %i °C carries %i A', (n, insulation, amps) => {
    expect(readTable(usTable5, awg(n), insulation)).toEqual({ amps, columnC: insulation, row: 'its own' })
  })
  // 33 CFR 183.425 table 5: its last column is 200 °C, ISO 10133 table A.1 ends before it.
  it('has insulation of 200 °C as the best', () => {
    expect(bestInsulationC).toBe(200)
  })

  it('between two rows by section, and beyond the ends the last row (33 CFR 183.425 Table 5 begins at 18 AWG: 20 A at 105 °C)', () => {
    // 35 mm² to 50 mm² at 105 °C: 210 to 270 A.
    expect(readTable(isoTableA1, 42.5e-6, 105).amps).toBeCloseTo(240, 9)
    expect(readTable(isoTableA1, 160e-6, 105)).toEqual({ amps: 475, columnC: 105, row: 'above' })
    expect(readTable(usTable5, awg(19), 105)).toEqual({ amps: 20, columnC: 105, row: 'below' })
  })
  it('rise with the section and with the insulation', () => {
    for (const table of [usTable5, isoTableA1]) {
      for (const { amps } of table.rows) expect([...amps].sort((a, b) => a - b)).toEqual(amps)
      table.columnsC.forEach((_, c) => {
        const column = table.rows.map(({ amps }) => amps[c] ?? 0)
        expect([...column].sort((a, b) => a - b)).toEqual(column)
      })
    }
  })
  // IEC 60228:2004: no conductor measures its whole name; copper of 58 MS/m in the nominal section would have less resistance.
  it('of conductors hold no more copper than the section says', () => {
    for (const { mm2, ohmPerKilometre } of iec60228.rows)
      for (const ohm of ohmPerKilometre) expect(ohm).toBeGreaterThan(1000 / (58 * mm2))
  })
})

// 1 200 W through an inverter of 0.85 from 10.5 V, times 1.25: 168 A (battery–inverter wiring note).
it('a continuous load asks for 1.25 times its current', () => {
  const least = leastRating(1200 / 0.85 / 10.5)
  expect(least).toBeCloseTo(168.067, 3)
  expect([carriesLoad(175, least), carriesLoad(160, least)]).toEqual([true, false])
})

describe('guards', () => {
  const guards: Readonly<Record<string, (n: number) => unknown>> = {
    inRange: (n) => inRange('it', n, -1, 1),
    coordinate: (n) => coordinate('it', n),
    size: (n) => size('it', n),
    positive: (n) => positive('it', n),
    fraction: (n) => fraction('it', n),
    whole: (n) => whole('it', n, 0, 9),
    temperature: (n) => temperature('it', n),
    uncertain: (n) => uncertain('it', { value: 0, standard: n }),
  }
  it.each(Object.entries(guards))(
    '%s lets no NaN, infinity or overflow through, and names what it is',
    (_, guard) => {
      for (const bad of [Number.NaN, 1 / 0, -1 / 0, 1e300, -1e300]) {
        expect(() => guard(bad)).toThrow(OutOfRange)
        expect(() => guard(bad)).toThrow('it')
      }
    },
  )
  it('hold at their ends', () => {
    expect([inRange('it', -1, -1, 1), fraction('it', 1), whole('it', 9, 0, 9)]).toEqual([-1, 1, 9])
    expect(() => fraction('it', 0)).toThrow(OutOfRange)
    expect(() => positive('it', 0)).toThrow(OutOfRange)
    expect(() => whole('it', 1.5, 0, 9)).toThrow(OutOfRange)
    expect(() => uncertain('it', { value: 0, standard: -1e-9 })).toThrow(OutOfRange)
    // A class of 90 °C that went through kelvins.
    expect(temperature('it', 363.15 - 273.15)).toBe(90)
  })
  it('and the last bits of a double do not decide', () => {
    expect([reaches(0.3, 0.1 + 0.2), reaches(0.29, 0.3), same(0.1 + 0.2, 0.3), same(0.3, 0.31)]).toEqual([
      true,
      false,
      true,
      false,
    ])
  })
})
