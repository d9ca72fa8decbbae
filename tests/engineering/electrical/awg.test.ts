import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { awgArea, awgDiameter, awgFromArea } from '../../../server/src/engineering/electrical/awg.ts'
import { copperResistivity } from '../../../server/src/engineering/electrical/conductor.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { asPrinted, exactly } from './outside.ts'

/** A circle of a thousandth of an inch across is 1 CM, by definition. */
const circularMils = (area: number) => area / ((Math.PI / 4) * (0.001 * 0.0254) ** 2)

// ASTM B258 as reprinted in conversion tables; CM, boat cable: ABYC E-11 circular-mil table as reprinted in
// two boat-wiring references; Ω/km of solid wire at 20 °C: 1/(58 · area), which a published copper table
// gives to its two decimals.
const wires = [
  { n: 14, mm: '1.628', mm2: '2.081', cm: '4107', boat: 4100, ohmPerKm: '8.286' },
  { n: 12, mm: '2.053', mm2: '3.309', cm: '6530', boat: 6500, ohmPerKm: '5.211' },
  { n: 10, mm: '2.588', mm2: '5.261', cm: '10383', boat: 10500, ohmPerKm: '3.277' },
  { n: 8, mm: '3.264', mm2: '8.366', cm: '16510', boat: 16800, ohmPerKm: '2.061' },
  { n: 6, mm: '4.115', mm2: '13.30', cm: '26251', boat: 26600, ohmPerKm: '1.296' },
  { n: 4, mm: '5.189', mm2: '21.15', cm: '41741', boat: 42000, ohmPerKm: '0.815' },
  { n: 3, mm: '5.827', mm2: '26.67', cm: '52635', boat: undefined, ohmPerKm: '0.647' },
  { n: 2, mm: '6.544', mm2: '33.63', cm: '66371', boat: 66500, ohmPerKm: '0.513' },
  { n: 1, mm: '7.348', mm2: '42.41', cm: '83693', boat: 83690, ohmPerKm: '0.407' },
  { n: 0, mm: '8.251', mm2: '53.48', cm: '105535', boat: 105600, ohmPerKm: '0.322' },
  { n: -1, mm: '9.266', mm2: '67.43', cm: '133077', boat: 133100, ohmPerKm: '0.256' },
  { n: -2, mm: '10.40', mm2: '85.03', cm: '167806', boat: 167800, ohmPerKm: '0.203' },
  { n: -3, mm: '11.68', mm2: '107.2', cm: '211600', boat: 211600, ohmPerKm: '0.161' },
] as const

describe('American wire gauge', () => {
  it.each(wires)('$n AWG as in the ASTM B258 tables', ({ n, mm, mm2, cm, ohmPerKm }) => {
    asPrinted(awgDiameter(n) * 1e3, mm)
    asPrinted(awgArea(n) * 1e6, mm2)
    asPrinted(circularMils(awgArea(n)), cm)
    asPrinted((copperResistivity / awgArea(n)) * 1e3, ohmPerKm)
  })

  it.each(wires.filter(({ boat }) => boat))(
    '$n AWG is within 2 % of the ABYC E-11 boat-cable CM',
    ({ n, boat }) => {
      expect(Math.abs(circularMils(awgArea(n)) / (boat ?? 0) - 1)).toBeLessThan(0.02)
    },
  )

  it('36 AWG is 0.005 in and 4/0 is 0.460 in, by definition (ASTM B258)', () => {
    exactly(awgDiameter(36), 0.005 * 0.0254)
    exactly(awgDiameter(-3), 0.46 * 0.0254)
  })

  it('gives the gauge back from its section', () => {
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 40 }), (n) => {
        expect(awgFromArea(awgArea(n))).toBeCloseTo(n, 9)
      }),
    )
  })

  it.each([Number.NaN, 0.5, -4, 41, Number.POSITIVE_INFINITY])('has no gauge %s', (n) => {
    expect(() => awgArea(n)).toThrow(OutOfRange)
    expect(() => awgDiameter(n)).toThrow(OutOfRange)
  })

  it.each([Number.NaN, 0, -1e-6, 1e10, Number.POSITIVE_INFINITY])('has no section of %s m²', (area) => {
    expect(() => awgFromArea(area)).toThrow(OutOfRange)
  })
})
