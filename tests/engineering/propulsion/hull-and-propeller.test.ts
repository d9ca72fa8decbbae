import { describe, expect, it } from 'vitest'
import { kellerAreaRatio } from '../../../server/src/engineering/propulsion/cavitation.ts'
import { endurance, peukertTime } from '../../../server/src/engineering/propulsion/discharge.ts'
import { openWater } from '../../../server/src/engineering/propulsion/propeller-series.ts'
import {
  displacementPower,
  frictionCoefficient,
  hullResistance,
  resistanceRange,
} from '../../../server/src/engineering/propulsion/resistance.ts'
import {
  apparentSlip,
  turningAt,
  turningFor,
} from '../../../server/src/engineering/propulsion/turning-propeller.ts'
import { vapourPressure, waterOf } from '../../../server/src/engineering/propulsion/water.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'

const foot = 0.3048
const knot = 1852 / 3600
const pound = 0.45359237
const lbf = pound * 9.80665
const rpm = (2 * Math.PI) / 60

describe('resistance', () => {
  // Manual of a public resistance tool: L 218.75 m, ν 1.19e-6 m²/s, 1 to 3 m/s; its own ν is rounded, so within 0.02 %.
  it.each([
    [1, 0.001910808],
    [2, 0.001739616],
    [3, 0.001649932],
  ])('ITTC-57 at %d m/s is %d', (speed, expected) => {
    const found = frictionCoefficient((speed * 218.75) / 1.19e-6)
    expect(Math.abs(found / expected - 1)).toBeLessThan(3e-4)
  })

  // The Propeller Handbook [from memory]: 10 000 lb on 30 ft take 10.84 hp at 6 kn, 19.84 hp at a speed-length ratio of 1.34 (7.34 kn), by hand.
  it.each([
    [6, 8.08e3],
    [1.34 * Math.sqrt(30), 14.8e3],
  ])('the displacement rule at %d kn gives %d W', (knots, watts) => {
    const given = { speed: knots * knot, waterline: 30 * foot, displacement: 10_000 * pound }
    expect(Math.abs(displacementPower(given) / watts - 1)).toBeLessThan(2e-3)
  })

  const water = waterOf('sea', 15)

  it('the displacement rule reaches to its highest ratio itself, on any waterline', () => {
    // S/L 1.5 by definition of the range; the last digit of the speed decides nothing.
    for (let waterline = 1; waterline < 60; waterline += 0.37) {
      const rule = { by: 'displacement-rule', waterline, displacement: 5000 } as const
      expect(hullResistance(rule, water, resistanceRange(rule).high)).toBeGreaterThan(0)
      expect(hullResistance(rule, water, resistanceRange(rule).high * 1.001)).toBeUndefined()
    }
  })

  it('is not known beyond its points, and beyond what the rule is for', () => {
    const points = {
      by: 'points',
      points: [
        { at: 2, value: 380 },
        { at: 3, value: 1050 },
      ],
    } as const
    expect(hullResistance(points, water, 1.9)).toBeUndefined()
    expect(hullResistance(points, water, 3.1)).toBeUndefined()
    const rule = { by: 'displacement-rule', waterline: 9, displacement: 5000 } as const
    expect(hullResistance(rule, water, resistanceRange(rule).high * 1.01)).toBeUndefined()
    // Hull speed is at a ratio of 1.34 (surveyors' lexicon); the rule goes a little further.
    expect(resistanceRange(rule).high / (1.34 * Math.sqrt(9 / foot) * knot)).toBeCloseTo(1.5 / 1.34, 9)
  })

  it('adds friction to the waves, and more friction with more area', () => {
    const hull = {
      by: 'friction',
      waterline: 9.2,
      wettedArea: 24,
      formFactor: 0.15,
      wave: [
        { at: 1, value: 50 },
        { at: 3, value: 500 },
      ],
    } as const
    // By hand: Re 9.2 * 3 / 1.18831e-6 = 2.3226e7, CF 0.002605, ½ 1025.9 * 24 * 9 * 1.15 * CF = 331.9 N.
    expect(hullResistance(hull, water, 3)).toBeCloseTo(831.9, 0)
    expect(hullResistance({ ...hull, wettedArea: 48 }, water, 3)).toBeCloseTo(1163.8, 0)
  })
})

describe('water', () => {
  // International Critical Tables as reprinted in a handbook: fresh water at 5, 15, 25 °C: 0.99999, 0.99913, 0.99707 g/cm³; 1.5188, 1.1457, 0.8975 cSt.
  it.each([
    [5, 999.99, 1.5188],
    [15, 999.13, 1.1457],
    [25, 997.07, 0.8975],
  ])('fresh at %d °C', (celsius, density, viscosity) => {
    const water = waterOf('fresh', celsius)
    expect(Math.abs(water.density - density)).toBeLessThan(0.1)
    expect(Math.abs((water.viscosity * 1e6) / viscosity - 1)).toBeLessThan(7e-3)
  })

  it('is between sea and fresh where it is brackish', () => {
    const [sea, brackish, fresh] = (['sea', 'brackish', 'fresh'] as const).map(
      (kind) => waterOf(kind, 12).density,
    )
    expect(brackish).toBeCloseTo(((sea ?? 0) + (fresh ?? 0)) / 2, 9)
  })

  // Steam tables: 611.2 Pa at 0.01 °C, 1705.8 Pa at 15 °C, 2339 Pa at 20 °C, 4247 Pa at 30 °C.
  it.each([
    [0.01, 611.2],
    [15, 1705.8],
    [20, 2339],
    [30, 4247],
  ])('boils at %d °C below %d Pa', (celsius, pascals) => {
    expect(Math.abs(vapourPressure(celsius) / pascals - 1)).toBeLessThan(4e-3)
  })
})

describe('a propeller', () => {
  // A public solved exercise, B5-90: D = P = 10 ft, 200 rpm, 20 kn, w 0.18, 1.9905 slug/ft³; from the chart 26 540 lbf, 50 870 lbf·ft, 1937 hp.
  const propeller = {
    openWater: openWater({ blades: 5, areaRatio: 0.9, pitchRatio: 1 }),
    diameter: 10 * foot,
    density: 1.9905 * 515.378818,
  }

  it('gives what a solved exercise reads from the chart', () => {
    const found = turningAt(propeller, 20 * knot * 0.82, 200 * rpm)
    expect(found.advance).toBeCloseTo(0.83, 2)
    // The chart is read to 0.12 and 0.023.
    expect(Math.abs(found.thrust / lbf / 26_540 - 1)).toBeLessThan(0.03)
    expect(Math.abs(found.torque / (lbf * foot) / 50_870 - 1)).toBeLessThan(0.01)
    expect(Math.abs(found.power / 745.7 / 1937 - 1)).toBeLessThan(0.01)
  })

  // The torque of the exercise, KQ 0.023 at 198 rpm, is 49 860 lbf·ft; at J 0 KQ is 0.07318, so it turns at 111 rpm there and gives 33 460 lbf (by hand).
  it('at bollard', () => {
    const found = turningAt(propeller, 0, 111.2 * rpm)
    expect(Math.abs(found.torque / (lbf * foot) / 49_860 - 1)).toBeLessThan(5e-3)
    expect(Math.abs(found.thrust / lbf / 33_460 - 1)).toBeLessThan(2e-3)
  })

  it('turns as fast as its thrust asks for', () => {
    for (const inflow of [0, 2, 8])
      for (const thrust of [0.1, 1e3, 1e5])
        expect(turningFor(propeller, inflow, thrust).thrust / thrust).toBeCloseTo(1, 6)
  })

  // Momentum theory: no propeller is better than 2 / (1 + √(1 + CT)), CT = T / (½ ρ A Va²).
  it('is never better than an ideal one', () => {
    for (const inflow of [1, 4, 8])
      for (const thrust of [1e3, 1e4, 1e5]) {
        const { efficiency } = turningFor(propeller, inflow, thrust)
        const disc = (Math.PI / 4) * propeller.diameter ** 2
        const load = thrust / (0.5 * propeller.density * disc * inflow ** 2)
        expect(efficiency).toBeLessThan(2 / (1 + Math.sqrt(1 + load)))
      }
  })

  // A public question on marine engineering: pitch 3.8 m, 87 rpm, 10 kn: slip 6.6 %.
  it('slips', () => {
    expect(apparentSlip({ boatSpeed: 10 * knot, pitch: 3.8, speed: 87 * rpm })).toBeCloseTo(0.066, 3)
  })

  it('needs more blade the harder it pushes and the less deep it is', () => {
    const given = {
      thrust: 2e3,
      diameter: 0.42,
      blades: 3,
      depth: 0.5,
      density: 1025.9,
      celsius: 15,
      screws: 1,
    }
    // By hand: 2.2 * 2000 / ((101325 + 5030 - 1702) * 0.1764) + 0.2 = 0.4383.
    expect(kellerAreaRatio(given)).toBeCloseTo(0.4383, 3)
    expect(kellerAreaRatio({ ...given, thrust: 3e3 })).toBeGreaterThan(kellerAreaRatio(given))
    expect(kellerAreaRatio({ ...given, depth: 0.2 })).toBeGreaterThan(kellerAreaRatio(given))
  })
})

describe('a battery', () => {
  // Manual of a public battery monitor, page 27: share of 100 Ah (20 h) that is left at 10, 25, 50, 100, 200, 500 A, per cent. For 1.4 and 25 A it prints 52,
  // exactly it is 53.
  it.each([
    [1.1, [93, 85, 79, 74, 69, 63]],
    [1.2, [87, 72, 63, 55, 48, 40]],
    [1.25, [84, 67, 56, 47, 40, 32]],
    [1.3, [81, 62, 50, 41, 33, 25]],
    [1.4, [76, 52, 40, 30, 23, 16]],
    [1.5, [71, 45, 32, 22, 16, 10]],
  ])('with the exponent %d has so much at so many amperes', (exponent, shares) => {
    const found = [10, 25, 50, 100, 200, 500].map(
      (current) => (peukertTime({ capacity: 360e3, hourRate: 72e3, exponent, current }) * current) / 3600,
    )
    for (const [i, share] of shares.entries()) expect(Math.abs((found[i] ?? 0) - share)).toBeLessThan(1.01)
  })

  it('never has more than what is stated of it', () => {
    expect(peukertTime({ capacity: 360e3, hourRate: 72e3, exponent: 1.3, current: 1 })).toBe(360e3)
  })

  // Energy balance: 210 Ah at 96 V, 80 % usable, 20 % of that kept: 12.9 kWh, at 10 kW 1.29 h.
  it('lasts as long as its energy', () => {
    const one = { capacity: 210 * 3600, nominal: 96, usable: 0.8 }
    expect(endurance([one], 10e3, 0.2) / 3600).toBeCloseTo(1.29, 2)
    expect(endurance([one, one], 10e3, 0.2)).toBeCloseTo(2 * endurance([one], 10e3, 0.2), 6)
    expect(endurance([{ ...one, peukert: { exponent: 1, hourRate: 72e3 } }], 10e3, 0.2)).toBeCloseTo(
      endurance([one], 10e3, 0.2),
      6,
    )
  })

  it('is refused where it is none', () => {
    expect(() => endurance([], 10e3, 0.2)).toThrow(OutOfRange)
    expect(() => endurance([{ capacity: 0, nominal: 96, usable: 0.8 }], 10e3, 0.2)).toThrow(OutOfRange)
  })
})
