import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  averagePower,
  closingSurge,
  dischargeTime,
  endVoltage,
  type Precharge,
  peakCurrent,
  peakPower,
  prechargeEnergy,
  timeConstant,
  timeToFraction,
  touchSafe,
  voltageAfter,
} from '../../../server/src/engineering/electrical/precharge.ts'
import { storedEnergy } from '../../../server/src/engineering/electrical/stored-energy.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { near, relative } from './network-helpers.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

describe('published examples', () => {
  it('800 V, 47 Ω, 1 000 µF (precharge calculator page)', () => {
    const given = { voltage: 800, resistance: 47, capacitance: 1e-3 }
    exactly(timeConstant(given), 0.047)
    // The page takes 3 τ for 95 %: 141.0 ms.
    exactly(timeToFraction(given, 0.95) ?? 0, 0.1407994)
    asPrinted(3000 * timeConstant(given), '141.0')
    asPrinted(1000 * (timeToFraction(given, 0.99) ?? 0), '216.4')
    asPrinted(peakCurrent(given), '17.0')
    asPrinted(peakPower(given), '13617')
    asPrinted(prechargeEnergy(given, 10), '320.0')
    asPrinted(storedEnergy(given), '320.0')
  })

  it('5RC = 0.5 s with 50 Ω: 2.0 mF (precharge reference design, 2024)', () => {
    exactly(5 * timeConstant({ voltage: 400, resistance: 50, capacitance: 2e-3 }), 0.5)
  })

  it('20 µF, 50 kΩ, 20 V (Bird, Electrical Circuit Theory and Technology, problem 17.03)', () => {
    const given = { voltage: 20, resistance: 50e3, capacitance: 20e-6 }
    asPrinted(peakCurrent(given) * 1e3, '0.4')
    exactly(timeConstant(given), 1)
    exactly(((20 - voltageAfter(given, 1)) / 50e3) * 1e3, 0.147152)
    exactly(voltageAfter(given, 2), 17.29329)
    // The resistor has 15 V when the capacitor has 5.
    exactly(timeToFraction(given, 5 / 20) ?? 0, 0.287682)
  })

  it('0.5 µF, τ 12 ms, 10 V: 24 kΩ, 4.42 V after 7 ms (Bird, problem 17.04)', () => {
    const given = { voltage: 10, resistance: 24e3, capacitance: 0.5e-6 }
    exactly(timeConstant(given), 0.012)
    exactly(voltageAfter(given, 7e-3), 4.41965)
    asPrinted(voltageAfter(given, 7e-3), '4.42')
  })

  it.each([
    [0.632, 1],
    [0.865, 2],
    [0.9, Math.LN10],
    [0.95, 2.996],
    [0.98, 3.912],
    [0.99, 4.605],
    [0.993, 5],
  ])('%d of the voltage after %d τ (definition)', (fraction, taus) => {
    near(timeToFraction({ voltage: 96, resistance: 1, capacitance: 1 }, fraction), taus, 0.05)
    near(voltageAfter({ voltage: 1, resistance: 1, capacitance: 1 }, taus), fraction, 5.1e-4)
  })
})

const anyPrecharge: fc.Arbitrary<Precharge> = fc.record({
  voltage: fc.double({ min: 10, max: 1000, noNaN: true }),
  resistance: fc.double({ min: 1, max: 1000, noNaN: true }),
  capacitance: fc.double({ min: 1e-5, max: 0.1, noNaN: true }),
  across: fc.option(fc.double({ min: 10, max: 1e5, noNaN: true }), { nil: undefined }),
})

describe('any precharge', () => {
  it('is that of a circuit followed in small steps', () => {
    fc.assert(
      fc.property(anyPrecharge, fc.double({ min: 0.1, max: 6, noNaN: true }), (given, taus) => {
        const { voltage, resistance, capacitance, across = Number.POSITIVE_INFINITY } = given
        const time = taus * timeConstant(given)
        const steps = 4000
        let [volts, heat] = [0, 0]
        const rate = (v: number) => ((voltage - v) / resistance - v / across) / capacitance
        for (let i = 0; i < steps; i++) {
          const step = time / steps
          const middle = volts + (rate(volts) * step) / 2
          heat += ((voltage - middle) ** 2 / resistance) * step
          volts += rate(middle) * step
        }
        relative(voltageAfter(given, time), volts, 1e-5)
        relative(prechargeEnergy(given, time), heat, 1e-5)
      }),
      { numRuns: 50 },
    )
  })

  it('reaches a fraction at the time it says, or never', () => {
    fc.assert(
      fc.property(anyPrecharge, fc.double({ min: 0.01, max: 0.999, noNaN: true }), (given, fraction) => {
        const time = timeToFraction(given, fraction)
        if (time === undefined) expect(endVoltage(given)).toBeLessThanOrEqual(fraction * given.voltage)
        else relative(voltageAfter(given, time), fraction * given.voltage, 1e-9)
      }),
    )
  })

  it('takes longer and ends no higher with more resistance; its whole heat is ½CV² if nothing is across', () => {
    fc.assert(
      fc.property(anyPrecharge, fc.double({ min: 1, max: 10, noNaN: true }), (given, more) => {
        const larger = { ...given, resistance: given.resistance * more }
        expect(timeConstant(larger)).toBeGreaterThanOrEqual(timeConstant(given) * (1 - 1e-12))
        expect(endVoltage(larger)).toBeLessThanOrEqual(endVoltage(given) * (1 + 1e-12))
        const alone = { ...given, across: undefined }
        relative(prechargeEnergy(alone, 50 * timeConstant(alone)), storedEnergy(alone), 1e-9)
      }),
    )
  })
})

describe('closing and discharge', () => {
  it('5 % of 96 V over 12 mΩ are 400 A', () => {
    exactly(closingSurge({ difference: 0.05 * 96, loop: 0.012 }), 400)
    expect(closingSurge({ difference: 0, loop: 0.012 })).toBe(0)
  })

  it('a bleeder of 10 kΩ takes 6.8 mF from 96 V to 60 V in RC ln(96/60)', () => {
    exactly(dischargeTime({ voltage: 96, resistance: 1e4, capacitance: 6.8e-3 }), 68 * Math.log(1.6))
    expect(dischargeTime({ voltage: 48, resistance: 1e4, capacitance: 6.8e-3 })).toBe(0)
    expect(dischargeTime({ voltage: touchSafe, resistance: 1e4, capacitance: 6.8e-3 })).toBe(0)
  })

  it('is precharge turned round: what has fallen to a fraction is what had risen to the rest', () => {
    const any = fc.double({ min: 0.01, max: 0.99, noNaN: true })
    fc.assert(
      fc.property(any, (fraction) => {
        const time = dischargeTime({ voltage: 96, resistance: 100, capacitance: 1e-3, to: 96 * fraction })
        relative(
          time,
          timeToFraction({ voltage: 96, resistance: 100, capacitance: 1e-3 }, 1 - fraction) ?? 0,
          1e-9,
        )
      }),
    )
  })

  it('320 J each minute are 5.33 W', () => {
    asPrinted(averagePower({ energy: 320, interval: 60 }), '5.33')
  })
})

it('needs numbers above zero', () => {
  for (const bad of badNumbers) {
    expect(() => timeConstant({ voltage: 96, resistance: bad, capacitance: 1e-3 })).toThrow(OutOfRange)
    expect(() => timeConstant({ voltage: 96, resistance: 47, capacitance: bad })).toThrow(OutOfRange)
    expect(() => endVoltage({ voltage: bad, resistance: 47, capacitance: 1e-3 })).toThrow(OutOfRange)
    expect(() => endVoltage({ voltage: 96, resistance: 47, capacitance: 1e-3, across: bad })).toThrow(
      OutOfRange,
    )
    expect(() => averagePower({ energy: 320, interval: bad })).toThrow(OutOfRange)
    expect(() => closingSurge({ difference: 1, loop: bad })).toThrow(OutOfRange)
    expect(() => dischargeTime({ voltage: 96, resistance: 1, capacitance: 1, to: bad })).toThrow(OutOfRange)
  }
  expect(() => timeToFraction({ voltage: 96, resistance: 47, capacitance: 1e-3 }, 1)).toThrow(OutOfRange)
  expect(() => voltageAfter({ voltage: 96, resistance: 47, capacitance: 1e-3 }, -1)).toThrow(OutOfRange)
})
