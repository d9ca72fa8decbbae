import { describe, expect, it } from 'vitest'
import { assumedGapLimit, gapVariation } from '../../server/src/engineering/alignment/gap-variation.ts'
import { gaugeStepToDecide, verdict } from '../../server/src/engineering/alignment/verdict.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { expanded } from '../../server/src/quantity/uncertainty.ts'
import { deg, face, inch, mm, round } from './alignment-helpers.ts'

const U = (value: number, expandedUncertainty: number) => ({ value, standard: expandedUncertainty / 2 })

describe('verdict (decision rule of ISO 14253-1: conformity and non-conformity are each proved)', () => {
  it.each([
    [0.07, 0.02, 'within'],
    [0.08, 0.02, 'within'], // value + U on the limit conforms
    [0.081, 0.02, 'undecided'],
    [0.1, 0.02, 'undecided'],
    [0.119, 0.02, 'undecided'],
    [0.12, 0.02, 'undecided'], // value - U on the limit does not yet prove the contrary
    [0.121, 0.02, 'outside'],
    [0.1, 0, 'within'],
  ] as const)('%d ± %d against at most 0.1 is %s', (value, u, wanted) => {
    expect(verdict(U(value, u), 0.1)).toBe(wanted)
    expect(verdict(U(value * mm, u * mm), 0.1 * mm)).toBe(wanted)
  })
  it.each([0, -0.1, Number.NaN, Number.POSITIVE_INFINITY, 1e9])(
    'no verdict against a limit of %d',
    (limit) => {
      expect(() => verdict(U(0.1, 0.01), limit)).toThrow(OutOfRange)
    },
  )
  it.each([U(Number.NaN, 0.01), U(0.1, Number.NaN), U(0.1, -0.01), U(1e30, 0.01)])(
    'no verdict on %j',
    (bad) => {
      expect(() => verdict(bad, 0.1)).toThrow(OutOfRange)
    },
  )
})

describe('gauge step that could decide', () => {
  const fit = { gaugeStep: 0.02 * mm, gaugeExplains: true }
  it('goes with the uncertainty: half the uncertainty, half the step', () => {
    expect(gaugeStepToDecide(U(0.09 * mm, 0.02 * mm), 0.1 * mm, fit)).toBeCloseTo(0.01 * mm, 12)
    expect(gaugeStepToDecide(U(0.11 * mm, 0.02 * mm), 0.1 * mm, fit)).toBeCloseTo(0.01 * mm, 12)
  })
  it('decides when it is used: the same gaps on a finer gauge', () => {
    const gaps = round([2.06, 2.015, 1.97, 2.015], mm) // 0.09 mm against 0.10 mm
    const coarse = face(gaps, 55 * mm, 0.02 * mm)
    expect(verdict(gapVariation(coarse), 0.1 * mm)).toBe('undecided')
    const step = gaugeStepToDecide(gapVariation(coarse), 0.1 * mm, coarse) ?? Number.NaN
    expect(verdict(gapVariation(face(gaps, 55 * mm, 0.99 * step)), 0.1 * mm)).toBe('within')
    expect(verdict(gapVariation(face(gaps, 55 * mm, 1.01 * step)), 0.1 * mm)).toBe('undecided')
  })
  it('is none when the value is on the limit, or nearer than any gauge could tell', () => {
    expect(gaugeStepToDecide(U(0.1 * mm, 0.02 * mm), 0.1 * mm, fit)).toBeUndefined()
    expect(gaugeStepToDecide(U(0.0999 * mm, 0.02 * mm), 0.1 * mm, fit)).toBeUndefined()
  })
  it('is none when the readings disagree by more than their gauge explains: read again first', () => {
    const open = face(round([2.06, 2.115, 1.97, 2.015], mm), 55 * mm)
    expect(gaugeStepToDecide(gapVariation(open), 0.1 * mm, open)).toBeUndefined()
  })
})

describe('gap variation', () => {
  it('is D times the slope: a plane tilted between the angles read shows whole, as read it shows 29 % less', () => {
    // 0.1 mm all round at 45 degrees: the four readings differ by 0.1 cos 45 = 0.0707 mm at most (geometry).
    const gaps = [0, 90, 180, 270].map((a) => ({
      angle: a * deg,
      value: 2 * mm + 0.05 * mm * Math.cos((a - 45) * deg),
    }))
    expect(gapVariation(face(gaps, 55 * mm)).value).toBeCloseTo(0.1 * mm, 12)
    const read = gaps.map(({ value }) => value)
    expect(Math.max(...read) - Math.min(...read)).toBeCloseTo(0.1 * mm * Math.SQRT1_2, 12)
  })
  it('with four readings a quarter turn apart is uncertain by the step over √6 ([derived]: difference of two rectangular errors)', () => {
    const far = gapVariation(face(round([2.5, 2, 1.5, 2], mm), 55 * mm))
    expect(far.standard).toBeCloseTo((0.02 * mm) / Math.sqrt(6), 12)
  })
  it('is not known to be nothing when all gaps read alike: zero is inside value ± U, and U is not zero', () => {
    const none = gapVariation(face(round([2, 2, 2, 2], mm), 55 * mm))
    expect(none.value).toBeCloseTo(0, 12)
    // Two independent components of step/√6 each: 95 % of lengths are below √5.991 of that (chi-square table,
    // 2 degrees of freedom).
    expect(expanded(none)).toBeCloseTo((Math.sqrt(5.991) * 0.02 * mm) / Math.sqrt(6), 8)
  })
  it('near zero takes the least certain direction of uneven angles (scan over directions)', () => {
    const uneven = face(
      [0, 100, 200].map((angle) => ({ angle: angle * deg, value: 2 * mm })),
      55 * mm,
    )
    const [, [, vv = 0, vh = 0] = [], [, , hh = 0] = []] = uneven.covariance
    const along = Array.from({ length: 1800 }, (_, i) => (i / 10) * deg).map((a) =>
      Math.sqrt(vv * Math.cos(a) ** 2 + 2 * vh * Math.cos(a) * Math.sin(a) + hh * Math.sin(a) ** 2),
    )
    const ratio = expanded(gapVariation(uneven)) / (110 * mm * Math.sqrt(5.991) * Math.max(...along))
    expect(ratio).toBeCloseTo(1, 4)
    expect(Math.max(...along) / Math.min(...along)).toBeGreaterThan(1.2)
  })
  it('grows with the diameter it is taken at', () => {
    const f = face(round([2.5, 2, 1.5, 2], mm), 50 * mm)
    expect(gapVariation(f, { diameter: 125 * mm }).value).toBeCloseTo(1.25 * gapVariation(f).value, 12)
    expect(() => gapVariation(f, { diameter: 0 })).toThrow(OutOfRange)
  })
})

describe('limit when nothing is stated', () => {
  it('is 0.001 in per inch of flange diameter (public boat-class alignment guide; 3-4 in flange: 0.003-0.004 in)', () => {
    expect(assumedGapLimit(100 * mm)).toBeCloseTo(0.1 * mm, 12)
    expect(assumedGapLimit(3 * inch)).toBeCloseTo(0.003 * inch, 12)
    expect(assumedGapLimit(4 * inch)).toBeCloseTo(0.004 * inch, 12)
  })
  it.each([0, -0.1, Number.NaN, 1e6])('is not known for a flange of %d', (bad) => {
    expect(() => assumedGapLimit(bad)).toThrow(OutOfRange)
  })
})
