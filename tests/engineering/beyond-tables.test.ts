// Beyond the rows of a table nothing gets milder: above it its largest row is used, below it its smallest row is only a bound, or the table refuses.
// What each table does at both ends is written here once; docs/engineering.md says the same for people. Figures: the sources beside the tables.
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gaugeStepMade } from '../../server/src/engineering/alignment/gauge-steps.ts'
import { speedLimits } from '../../server/src/engineering/alignment/speed-limits.ts'
import { ampacity } from '../../server/src/engineering/electrical/ampacity.ts'
import { clearing, clearingCurve } from '../../server/src/engineering/electrical/clearing-curve.ts'
import {
  type ConductorSection,
  conductorResistance,
} from '../../server/src/engineering/electrical/conductor.ts'
import { bundlingFactor, machinerySpaceFactor } from '../../server/src/engineering/electrical/derating.ts'
import { conductorLimit, largestRating } from '../../server/src/engineering/electrical/protection.ts'
import { smallestSection } from '../../server/src/engineering/electrical/smallest-section.ts'
import {
  largestStandardRating,
  smallestStandardRating,
  standardRatings,
} from '../../server/src/engineering/electrical/standard-ratings.ts'
import { rowsAround } from '../../server/src/engineering/rows.ts'
import { ktyResistance } from '../../server/src/engineering/temperature/kty84.ts'
import { usualSlide } from '../../server/src/engineering/usual-holes.ts'
import { fitBand } from '../../server/src/quantity/fits.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

const metric = (mm2: number): ConductorSection => ({ system: 'metric', mm2 })
const awg = (n: number): ConductorSection => ({ system: 'awg', n })
const amps = (section: ConductorSection, insulationC = 105, bundled = 1) =>
  ampacity({ section, insulationC, place: 'open', bundled }).amps
const refused = (work: () => number): number => {
  try {
    return work()
  } catch (error) {
    if (error instanceof OutOfRange) return Number.NEGATIVE_INFINITY
    throw error
  }
}
const width = (nominal: number) => {
  const band = fitBand(nominal, 'h9')
  return band ? (band.high ?? 0) - (band.low ?? 0) : Number.POSITIVE_INFINITY
}

const curve = clearingCurve([
  { current: 945, time: 100 },
  { current: 3000, time: 0.1 },
])

interface Table {
  /** The file that holds its rows. */
  readonly file: string
  /** From well below its first row to well above its last. */
  readonly from: number
  readonly to: number
  readonly whole?: true
  /** What the table gives: never less for a larger value. Refused is as strict as can be. */
  readonly rises: (value: number) => number
}

const tables: Readonly<Record<string, Table>> = {
  'ampacity by mm²: the largest row above, an upper bound below': {
    file: 'electrical/ampacity-tables.ts',
    from: 0.01,
    to: 5000,
    rises: (mm2) => amps(metric(mm2)),
  },
  'ampacity by wire gauge: an upper bound below 18 AWG; larger than 4/0 is not a gauge': {
    file: 'electrical/ampacity-tables.ts',
    from: -60,
    to: 3,
    whole: true,
    rises: (n) => refused(() => amps(awg(-n))),
  },
  'ampacity by insulation: refused below 60 °C, the 200 °C column above': {
    file: 'electrical/ampacity-tables.ts',
    from: -60,
    to: 250,
    rises: (c) => refused(() => amps(metric(35), c)),
  },
  'bundling: refused below one, 0.4 from 25 on': {
    file: 'electrical/derating.ts',
    from: 1,
    to: 1000,
    whole: true,
    rises: (n) => -bundlingFactor(n).value,
  },
  'machinery space by insulation: refused below 60 °C, that of 200 °C above': {
    file: 'electrical/derating.ts',
    from: -60,
    to: 250,
    rises: (c) => refused(() => machinerySpaceFactor(c).value),
  },
  'resistance by mm²: scaled from the worst row, never above the next smaller one': {
    file: 'electrical/conductor.ts',
    from: 0.01,
    to: 5000,
    rises: (mm2) => -conductorResistance({ section: metric(mm2) }).ohmPerMetre,
  },
  'standard ratings: none above the largest': {
    file: 'electrical/standard-ratings.ts',
    from: 0.1,
    to: 5000,
    rises: (a) => smallestStandardRating(a, 'iec') ?? Number.POSITIVE_INFINITY,
  },
  'largest rating a conductor bears: what it carries, where no standard rating is near': {
    file: 'electrical/protection.ts',
    from: 0.1,
    to: 5000,
    rises: (a) => largestRating(conductorLimit({ ampacity: a, volts: 96 }), 'iec'),
  },
  'limits by speed: the fastest row above it, the slowest below': {
    file: 'alignment/speed-limits.ts',
    from: 0.01,
    to: 100_000,
    rises: (speed) => -speedLimits(speed).offset,
  },
  'usual holes: from the smallest stud there can be, the largest row above': {
    file: 'usual-holes.ts',
    from: 1,
    to: 126, // 127 mm is 5 in, and inch holes are narrower
    whole: true,
    rises: (mm) => usualSlide(mm / 1000),
  },
  'gauge steps: none finer than the finest that is made': {
    file: 'alignment/gauge-steps.ts',
    from: 1e-9,
    to: 1e-3,
    rises: (step) => gaugeStepMade(step, 'metric') ?? 0,
  },
  'resistance of KTY84: refused at both ends': {
    file: 'temperature/kty84.ts',
    from: -200,
    to: 500,
    rises: (celsius) =>
      celsius > 0 ? -refused(() => -ktyResistance(celsius)) : refused(() => ktyResistance(celsius)),
  },
  'clearing curves: below their points a device may never open, above them no sooner than at the last': {
    file: 'electrical/clearing-curve.ts',
    from: 100,
    to: 100_000,
    rises: (current) => -(clearing(curve, current, 0).latest ?? Number.POSITIVE_INFINITY),
  },
  'fits of ISO 286: none above 250 mm': {
    file: '../quantity/fits.ts',
    from: 1e-4,
    to: 1,
    rises: width,
  },
}

describe('no table gets milder beyond its rows', () => {
  it.each(Object.entries(tables))('%s', (_, { from, to, whole, rises }) => {
    const value = whole
      ? fc.integer({ min: from, max: to })
      : fc.oneof(
          fc.double({ min: from, max: to, noNaN: true }),
          fc.double({ min: 0, max: 1, noNaN: true }).map((share) => from + (to - from) * share ** 6),
        )
    fc.assert(
      fc.property(value, value, (a, b) => {
        const [low, high] = [rises(Math.min(a, b)), rises(Math.max(a, b))]
        expect(high).toBeGreaterThanOrEqual(Number.isFinite(low) ? low - 1e-12 * Math.abs(low) : low)
      }),
      { numRuns: 400 },
    )
  })
})

it('every lookup in rows is named here', () => {
  const floor = path.resolve(import.meta.dirname, '../../server/src/engineering')
  const using = readdirSync(floor, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.ts') && file !== 'rows.ts')
    .filter((file) => /\browsAround\b/.test(readFileSync(path.join(floor, file), 'utf8')))
  const named = new Set(Object.values(tables).map(({ file }) => file))
  expect(using.filter((file) => !named.has(file))).toEqual([])
})

describe('rows around a value', () => {
  const rows = [1, 2, 4]
  it.each([
    [0.5, undefined, 1],
    [1, 1, 1],
    [3, 2, 4],
    [4, 4, 4],
    [5, 4, undefined],
  ])('%s lies between %s and %s', (value, under, over) => {
    expect(rowsAround(rows, (row) => row, value)).toEqual({ under, over })
  })
})

describe('ends of what is made and allowed', () => {
  // IEC 60269 by R10 (from memory above 200 A) ends at 630 A here, NEC 240.6(A) at 1200 A.
  it.each([
    ['iec', 630],
    ['us', 1200],
  ] as const)('the %s ratings end at %i A', (series, amps) => {
    expect(largestStandardRating(series)).toBe(amps)
    expect(smallestStandardRating(amps + 1, series)).toBeUndefined()
    expect([...standardRatings[series].amps].sort((a, b) => a - b)).toEqual(standardRatings[series].amps)
  })

  // 33 CFR 183.425(d) and (e): 16 AWG (1.309 mm² by ASTM B258), 18 AWG (0.823 mm²) in a sheath; ISO 10133:2012, 7.7: 1 mm² and 0.75 mm².
  it.each([
    ['awg', 1.309, 0.823],
    ['metric', 1, 0.75],
  ] as const)('the smallest conductor, %s: %s mm², in a sheath %s mm²', (system, alone, inSheath) => {
    const smallest = smallestSection(system)
    expect(smallest.alone * 1e6).toBeCloseTo(alone, 3)
    expect(smallest.inSheath * 1e6).toBeCloseTo(inSheath, 3)
  })
})
