import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  openWater,
  openWaterEfficiency,
  seriesRange,
  thrustCoefficient,
  torqueCoefficient,
} from '../../../server/src/engineering/propulsion/propeller-series.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'

const curve = (blades: number, areaRatio: number, pitchRatio: number) =>
  openWater({ blades, areaRatio, pitchRatio })

describe('the Wageningen B-series', () => {
  // Kuiper, The Wageningen Propeller Series (MARIN 92-001), pages 111 and 128, as quoted in the tests of an open ship-motion simulator. B3-40 at J 0.2 is
  // printed as 0.135394546; the sum gives 0.135394566.
  it.each([
    [6, 0.65, 1.4, 0, 0.603363, 1.209493726],
    [6, 0.65, 1.4, 0.2, 0.569237985, 1.138594465],
    [6, 0.65, 1.4, 0.3, 0.544592015, 1.094459956],
    [6, 0.65, 1.4, 1.2, 0.161314404, 0.420257329],
    [3, 0.4, 0.5, 0, 0.188195882, 0.160531235],
    [3, 0.4, 0.5, 0.2, 0.135394546, 0.125396067],
    [3, 0.4, 0.5, 0.3, 0.104372086, 0.105448718],
  ])('Z %d, AE/A0 %d, P/D %d, J %d', (blades, area, pitch, advance, kt, tenKq) => {
    const propeller = curve(blades, area, pitch)
    expect(thrustCoefficient(propeller, advance)).toBeCloseTo(kt, 6)
    expect(10 * torqueCoefficient(propeller, advance)).toBeCloseTo(tenKq, 6)
  })

  // The same source, B2-30.
  it.each([
    [0.7, 0, 0.242745716],
    [0.7, 0.3, 0.165272939],
    [0.7, 0.5, 0.103833149],
  ])('thrust of Z 2, AE/A0 0.30, P/D %d, J %d', (pitch, advance, kt) => {
    expect(thrustCoefficient(curve(2, 0.3, pitch), advance)).toBeCloseTo(kt, 7)
  })
  it.each([
    [1.2, 0, 0.654180539],
    [1.2, 0.3, 0.540388943],
    [1.2, 0.5, 0.454162477],
  ])('torque of Z 2, AE/A0 0.30, P/D %d, J %d', (pitch, advance, tenKq) => {
    expect(10 * torqueCoefficient(curve(2, 0.3, pitch), advance)).toBeCloseTo(tenKq, 7)
  })

  // A solved exercise reads KT 0.12, KQ 0.023 from the chart of B5-90 at P/D 1, J 0.83.
  it('B5-90 agrees with its chart as well as that can be read', () => {
    const propeller = curve(5, 0.9, 1)
    expect(Math.abs(thrustCoefficient(propeller, 0.83) - 0.12)).toBeLessThan(0.005)
    expect(Math.abs(torqueCoefficient(propeller, 0.83) - 0.023)).toBeLessThan(0.001)
  })

  const { blades, areaRatio, pitchRatio } = seriesRange
  const any = fc.record({
    blades: fc.integer({ min: blades.low, max: blades.high }),
    areaRatio: fc.double({ min: areaRatio.low, max: areaRatio.high, noNaN: true }),
    pitchRatio: fc.double({ min: pitchRatio.low, max: pitchRatio.high, noNaN: true }),
  })

  it('loses thrust and torque as the boat goes faster, up to no thrust', () => {
    fc.assert(
      fc.property(any, fc.double({ min: 0, max: 0.99, noNaN: true }), (made, share) => {
        const propeller = openWater(made)
        expect(propeller.zeroThrust).toBeGreaterThan(0.4)
        expect(propeller.zeroThrust).toBeLessThan(1.9)
        const [here, further] = [share, share + 0.01].map((at) => at * propeller.zeroThrust)
        if (here === undefined || further === undefined) return
        expect(thrustCoefficient(propeller, further)).toBeLessThan(thrustCoefficient(propeller, here) + 2e-3)
        expect(openWaterEfficiency(propeller, here)).toBeLessThan(0.9)
        expect(torqueCoefficient(propeller, further)).toBeGreaterThan(0)
      }),
    )
  })

  it.each([
    [1, 0.5, 1],
    [8, 0.5, 1],
    [3.5, 0.5, 1],
    [4, 0.29, 1],
    [4, 1.06, 1],
    [4, 0.5, 0.49],
    [4, 0.5, 1.41],
    [4, 0.5, 0],
    [4, Number.NaN, 1],
  ])('refuses Z %d, AE/A0 %d, P/D %d', (z, area, pitch) => {
    expect(() => curve(z, area, pitch)).toThrow(OutOfRange)
  })

  it('refuses what is beyond no thrust, and a propeller that is drawn backwards', () => {
    const propeller = curve(4, 0.5, 1)
    expect(() => thrustCoefficient(propeller, propeller.zeroThrust * 1.01)).toThrow(OutOfRange)
    expect(() => torqueCoefficient(propeller, -0.1)).toThrow(OutOfRange)
  })
})
