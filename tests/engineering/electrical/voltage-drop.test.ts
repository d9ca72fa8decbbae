import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { copperResistivity, resistanceAt } from '../../../server/src/engineering/electrical/conductor.ts'
import {
  dcDrop,
  operatingResistance,
  threePhaseDrop,
  touchingCoreReactance,
} from '../../../server/src/engineering/electrical/voltage-drop.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

const amps = fc.double({ min: 0.1, max: 2000, noNaN: true })
const metres = fc.double({ min: 0.1, max: 100, noNaN: true })
const ohmPerMetre = fc.double({ min: 5e-5, max: 0.02, noNaN: true })

describe('the small-craft formulas', () => {
  const area = 35e-6
  const lost = (conductorC: number) => {
    const run = { length: 3, ohmPerMetre: resistanceAt({ resistance: copperResistivity / area, conductorC }) }
    return dcDrop({ current: 100, out: run, back: run })
  }

  // ABYC E-11.14.2.6 (quoted in a public thread): volts = K I L / CM, K = 10.75 Ω·CM/ft, L out and back in feet.
  it('of ABYC E-11 are the drop in copper of 29 °C', () => {
    const circularMils = area / ((Math.PI / 4) * (0.001 * 0.0254) ** 2)
    expect(lost(29) / ((10.75 * 100 * (6 / 0.3048)) / circularMils)).toBeCloseTo(1, 2)
  })

  // ISO 10133 and 13297, annex (marine supplier note): volts = 0.0164 I L / S, L out and back in m, S in mm².
  it('of ISO 13297 are the drop in copper of 8 °C: a conductor of 90 °C loses 34 % more', () => {
    const iso = (0.0164 * 100 * 6) / 35
    expect(lost(8) / iso).toBeCloseTo(1, 2)
    expect(lost(90) / iso).toBeCloseTo(1.34, 2)
  })
})

describe('DC drop', () => {
  it('is taken out and back, each with its own conductor', () => {
    // Ohm's law: 2 mΩ out, 3 mΩ back, 50 A.
    const given = {
      current: 50,
      out: { length: 2, ohmPerMetre: 1e-3 },
      back: { length: 1.5, ohmPerMetre: 2e-3 },
    }
    exactly(dcDrop(given), 0.25)
  })

  it('grows in proportion to current and length, and does not mind which run is which', () => {
    fc.assert(
      fc.property(amps, metres, metres, ohmPerMetre, ohmPerMetre, (current, l1, l2, r1, r2) => {
        const at = (i: number, scale: number, swap = false) => {
          const a = { length: l1 * scale, ohmPerMetre: r1 }
          const b = { length: l2 * scale, ohmPerMetre: r2 }
          return dcDrop({ current: i, out: swap ? b : a, back: swap ? a : b })
        }
        exactly(at(current * 3, 1), 3 * at(current, 1))
        exactly(at(current, 3), 3 * at(current, 1))
        exactly(at(current, 1, true), at(current, 1))
      }),
    )
  })

  // Factor 1.2751 at 90 °C: 0.00393 /K (IEC 60028).
  it('takes the conductor to be as warm as its insulation allows, and says so', () => {
    const worst = operatingResistance({ ohmPerMetre: 0.001, insulationC: 90 })
    asPrinted(worst.ohmPerMetre * 1000, '1.2751')
    expect(worst.assumptions).toHaveLength(1)
    const known = operatingResistance({ ohmPerMetre: 0.001, insulationC: 90, conductorC: 20 })
    expect(known).toEqual({ ohmPerMetre: 0.001, conductorC: 20, assumptions: [] })
  })
})

describe('three-phase drop', () => {
  // Mehta & Mehta, Principles of Power System, Ex. 14.1, p. 359: R 0.2, X 0.1 Ω/km; 100 A at pf 0.707 over
  // 200 m, 200 A at pf 0.8 over 300 m. A single circuit, so a three-phase drop over √3.
  it('Σ I (R cos φ + X sin φ) is 17.442 V, within 2.5 % of the complex magnitude 17.855 V', () => {
    const load = (current: number, length: number, powerFactor: number) =>
      threePhaseDrop({
        current,
        run: { length, ohmPerMetre: 0.2e-3 },
        ohmReactancePerMetre: 0.1e-3,
        powerFactor,
      })
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the power factor as the book has it
    const drop = (load(100, 200, 0.707) + load(200, 300, 0.8)) / Math.sqrt(3)
    asPrinted(drop, '17.442')
    expect(drop / 17.855).toBeGreaterThan(0.975)
  })

  // 84.9 A, 100 m, R 0.87, X 0.08 Ω/km, pf 0.85: √3 · 8.49 · (0.87 · 0.85 + 0.08 · 0.52678). A cable
  // reference prints 11.8 V, which its own formula does not give.
  it('25 mm² over 100 m: 11.494 V', () => {
    const run = { length: 100, ohmPerMetre: 0.87e-3 }
    asPrinted(
      threePhaseDrop({ current: 84.9, run, ohmReactancePerMetre: 0.08e-3, powerFactor: 0.85 }),
      '11.494',
    )
  })

  it('reactance of touching cores is 0.08 Ω/km at 50 Hz (UTE C 15-105), in proportion to frequency', () => {
    exactly(touchingCoreReactance(50) * 1000, 0.08)
    exactly(touchingCoreReactance(200) * 1000, 0.32)
  })

  it('grows in proportion to current and length, and is √3 I R l at power factor 1', () => {
    const factor = fc.double({ min: 0.1, max: 1, noNaN: true })
    fc.assert(
      fc.property(amps, metres, ohmPerMetre, factor, (current, length, ohm, powerFactor) => {
        const at = (i: number, l: number, cos: number) =>
          threePhaseDrop({
            current: i,
            run: { length: l, ohmPerMetre: ohm },
            ohmReactancePerMetre: 8e-5,
            powerFactor: cos,
          })
        exactly(at(current * 3, length, powerFactor), 3 * at(current, length, powerFactor))
        exactly(at(current, length * 3, powerFactor), 3 * at(current, length, powerFactor))
        exactly(at(current, length, 1), Math.sqrt(3) * current * ohm * length)
      }),
    )
  })
})

describe('bad numbers', () => {
  const run = { length: 2, ohmPerMetre: 0.001 }

  it.each(badNumbers)('%s is refused', (bad) => {
    expect(() => dcDrop({ current: bad, out: run, back: run })).toThrow(OutOfRange)
    expect(() => dcDrop({ current: 1, out: { ...run, length: bad }, back: run })).toThrow(OutOfRange)
    expect(() => dcDrop({ current: 1, out: run, back: { ...run, ohmPerMetre: bad } })).toThrow(OutOfRange)
    const phase = { current: 1, run, ohmReactancePerMetre: 0, powerFactor: 0.9 }
    expect(() => threePhaseDrop({ ...phase, current: bad })).toThrow(OutOfRange)
    expect(() => threePhaseDrop({ ...phase, powerFactor: bad })).toThrow(OutOfRange)
    expect(() => threePhaseDrop({ ...phase, run: { ...run, length: bad } })).toThrow(OutOfRange)
    expect(() => threePhaseDrop({ ...phase, run: { ...run, ohmPerMetre: bad } })).toThrow(OutOfRange)
    expect(() => operatingResistance({ ohmPerMetre: bad, insulationC: 90 })).toThrow(OutOfRange)
    expect(() => touchingCoreReactance(bad)).toThrow(OutOfRange)
  })

  it.each([Number.NaN, -1e-5, 80])('reactance of %s Ω/m is refused', (ohmReactancePerMetre) => {
    expect(() => threePhaseDrop({ current: 1, run, ohmReactancePerMetre, powerFactor: 1 })).toThrow(
      OutOfRange,
    )
  })

  it.each([Number.NaN, -100, 363.15])('a conductor at %s °C is refused', (conductorC) => {
    expect(() => operatingResistance({ ohmPerMetre: 0.001, insulationC: 90, conductorC })).toThrow(OutOfRange)
  })
})
