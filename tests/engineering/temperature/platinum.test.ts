import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  leadError,
  platinumRange,
  platinumResistance,
  platinumTemperature,
  platinumTolerance,
} from '../../../server/src/engineering/temperature/platinum.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'

describe('a platinum sensor', () => {
  // Pt100 and Pt1000 tables per IEC 60751, four of them, which agree.
  it.each([
    [-50, 80.31, 803.1],
    [0, 100, 1000],
    [50, 119.4, 1194],
    [100, 138.51, 1385.1],
    [150, 157.33, 1573.3],
    [200, 175.86, 1758.6],
  ])('has at %s °C the resistance of the tables: %s and %s Ω', (celsius, pt100, pt1000) => {
    expect(platinumResistance({ celsius, r0: 100 })).toBeCloseTo(pt100, 2)
    expect(Math.abs(platinumResistance({ celsius, r0: 1000 }) - pt1000)).toBeLessThanOrEqual(0.051)
  })

  // The same formula in full precision.
  it.each([
    [100, 1385.055],
    [25, 1097.347],
    [-50, 803.063],
    [150, 1573.251],
  ])('as Pt1000 has %s °C at %s Ω', (celsius, ohms) => {
    expect(platinumResistance({ celsius, r0: 1000 })).toBeCloseTo(ohms, 3)
    expect(platinumTemperature({ ohms, r0: 1000 })).toBeCloseTo(celsius, 3)
  })

  it.each([
    [-50, 0.25, 0.55],
    [0, 0.15, 0.3],
    [100, 0.35, 0.8],
    [150, 0.45, 1.05],
    [200, 0.55, 1.3],
  ])('may be off at %s °C by the tolerances of the tables', (celsius, a, b) => {
    expect(platinumTolerance('A', celsius)).toBeCloseTo(a, 9)
    expect(platinumTolerance('B', celsius)).toBeCloseTo(b, 9)
  })

  it('reads 26 K high with two leads of 5 Ω: example 1.3 of an open textbook, p. 54', () => {
    // It divides by the mean slope from 0 to 100 °C, 0.385 Ω/K. There this is what ours gives; at 200 °C, where the curve is flatter, it is 5 % more.
    expect(10 / 0.385).toBeCloseTo(25.974, 3)
    const error = (celsius: number) => leadError({ celsius, r0: 100, leads: 10 })
    expect(error(37)).toBeCloseTo(25.974, 1)
    const slope = 100 * (3.9083e-3 + 2 * -5.775e-7 * (200 + error(200) / 2))
    expect(error(200)).toBeCloseTo(10 / slope, 9)
    expect(error(200)).toBeCloseTo(27.31, 2)
  })

  it('of ten times the resistance reads a tenth as high', () => {
    expect(leadError({ celsius: 20, r0: 1000, leads: 1 })).toBeCloseTo(
      leadError({ celsius: 20, r0: 100, leads: 0.1 }),
      9,
    )
  })

  it('gives back the temperature it was asked for, over its range', () => {
    fc.assert(
      fc.property(
        fc.double({ min: platinumRange.low, max: platinumRange.high, noNaN: true }),
        fc.constantFrom(100, 1000),
        (celsius, r0) => {
          const ohms = platinumResistance({ celsius, r0 })
          expect(platinumTemperature({ ohms, r0 })).toBeCloseTo(celsius, 6)
        },
      ),
    )
  })

  it('is known for nothing beyond its range', () => {
    expect(() => platinumResistance({ celsius: 851, r0: 100 })).toThrow(OutOfRange)
    expect(() => platinumTemperature({ ohms: 0, r0: 100 })).toThrow(OutOfRange)
    expect(() => platinumTemperature({ ohms: Number.NaN, r0: 100 })).toThrow(OutOfRange)
    expect(() => platinumTemperature({ ohms: 1e9, r0: 1000 })).toThrow(OutOfRange)
  })
})
