import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { imbalance } from '../../../server/src/engineering/insulation/balance.ts'
import { insulationCorrection } from '../../../server/src/engineering/insulation/correction.ts'
import {
  insulationMinimum,
  insulationMinimumOld,
  insulationTestVoltage,
} from '../../../server/src/engineering/insulation/minimum.ts'
import {
  indexMeaningless,
  indexMinimum,
  polarisationIndex,
} from '../../../server/src/engineering/insulation/polarisation-index.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'

const halving = (celsius: number) => insulationCorrection({ celsius, insulation: 'thermoplastic' }).factor
const setting = (celsius: number) => insulationCorrection({ celsius, insulation: 'thermosetting' }).factor

describe('the least insulation resistance', () => {
  it('of old windings is 12, 34 and 1.22 MΩ at 11, 33 and 0.22 kV: two electrical notes', () => {
    expect([11e3, 33e3, 220].map(insulationMinimumOld)).toEqual([12e6, 34e6, 1.22e6])
  })

  it('of windings today is 5 MΩ, from 1 kV up 100 MΩ where form-wound: IEEE 43-2013, in a quiz of the test trade', () => {
    expect(insulationMinimum({ volts: 58, winding: 'random' })).toBe(5e6)
    expect(insulationMinimum({ volts: 400, winding: 'form' })).toBe(5e6)
    expect(insulationMinimum({ volts: 3300, winding: 'form' })).toBe(100e6)
  })

  it('is tested with the voltages of a service association', () => {
    expect([58, 999, 1000, 4160, 6600, 13_800].map((volts) => insulationTestVoltage(volts))).toEqual([
      { low: 250, high: 500 },
      { low: 250, high: 500 },
      { low: 500, high: 1000 },
      { low: 1000, high: 2500 },
      { low: 2500, high: 5000 },
      { low: 5000, high: 10_000 },
    ])
  })
})

describe('the correction to 40 °C', () => {
  it('by halving takes 150 MΩ at 20 °C to 75 MΩ at 30 °C: the manual of an insulation tester', () => {
    expect((150e6 * halving(20)) / halving(30)).toBeCloseTo(75e6, 3)
  })

  it('by halving is 10^(0.0301 t - 1.2041): a motor tutorial', () => {
    for (const t of [20, 40, 60, 70]) expect(halving(t) / 10 ** (0.0301 * t - 1.2041)).toBeCloseTo(1, 2)
    expect(halving(70)).toBe(8)
  })

  it('of thermosetting insulation is 3.3 at 70 °C', () => {
    expect(setting(70)).toBeCloseTo(3.26, 1)
  })

  it('is 1 at 40 °C, and rises', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 180, noNaN: true }),
        fc.constantFrom('thermoplastic', 'thermosetting', undefined),
        (celsius, insulation) => {
          const factor = (t: number) => insulationCorrection({ celsius: t, insulation }).factor
          expect(factor(40)).toBeCloseTo(1, 9)
          expect(factor(Math.min(celsius + 1, 180))).toBeGreaterThanOrEqual(factor(celsius) - 1e-9)
        },
      ),
    )
  })

  it('is the stricter one where the insulation is not known', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 180, noNaN: true }), (celsius) => {
        const { factor, method } = insulationCorrection({ celsius, insulation: undefined })
        expect(factor).toBe(Math.min(halving(celsius), setting(celsius)))
        expect(method).toBe(factor === halving(celsius) ? 'halving' : 'thermosetting')
      }),
    )
  })

  it('is of use only where windings are tested', () => {
    expect(() => halving(Number.NaN)).toThrow(OutOfRange)
    expect(() => halving(500)).toThrow(OutOfRange)
  })
})

describe('the polarisation index', () => {
  it('is 2 at least, for class A 1.5, and means nothing above 5 GΩ: IEEE 43, in a quiz of the test trade', () => {
    expect([indexMinimum('F'), indexMinimum('A'), indexMinimum(undefined)]).toEqual([2, 1.5, 2])
    expect(indexMeaningless).toBe(5e9)
    expect(polarisationIndex({ early: 200e6, late: 400e6 })).toBe(2)
  })

  it('of a short circuit is none', () => {
    expect(() => polarisationIndex({ early: 0, late: 1 })).toThrow(OutOfRange)
  })
})

describe('the imbalance of phases', () => {
  it('is the largest difference from the mean, as a share of it', () => {
    // 460, 467 and 450 V differ from their mean of 459 V by 9 V at most: 1.96 % (example in NEMA MG 1, from memory).
    expect(imbalance([460, 467, 450])).toBeCloseTo(9 / 459, 9)
  })

  it('does not depend on order or unit, and is 0 where all are the same', () => {
    const values = fc.array(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), { minLength: 3, maxLength: 3 })
    fc.assert(
      fc.property(values, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (list, unit) => {
        const found = imbalance(list)
        expect(found).toBeGreaterThanOrEqual(0)
        expect(imbalance([...list].reverse().map((value) => value * unit))).toBeCloseTo(found, 9)
        expect(imbalance(list.map(() => list[0] ?? 1))).toBeCloseTo(0, 9)
      }),
    )
  })

  it('of nothing is none', () => {
    expect(() => imbalance([])).toThrow(OutOfRange)
    expect(() => imbalance([0, 0, 0])).toThrow(OutOfRange)
    expect(() => imbalance([1, Number.NaN])).toThrow(OutOfRange)
  })
})
