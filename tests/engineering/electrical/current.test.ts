import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  dcCurrent,
  dcPower,
  inverterVoltage,
  lineCurrent,
  threePhaseInput,
} from '../../../server/src/engineering/electrical/current.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

describe('three-phase motor', () => {
  it('415 V, 12.75 kW, pf 0.77, 85 %: 27.10 A (Bird, Electrical Circuit Theory and Technology, Problem 19.11)', () => {
    const motor = { shaftPower: 12750, lineVoltage: 415, powerFactor: 0.77, efficiency: 0.85 }
    const current = lineCurrent(motor)
    exactly(current, 27.1014)
    asPrinted(current, '27.10')
    exactly(threePhaseInput({ ...motor, current }), 15000)
    exactly(current / Math.sqrt(3), 15.647) // in one phase of the delta
  })

  it('40 kW, 415 V, 70 A, pf 0.88: 44.278 kW in, 90.3 % (training slides 9.1.8)', () => {
    const input = threePhaseInput({ lineVoltage: 415, current: 70, powerFactor: 0.88 })
    exactly(input, 44278.1)
    asPrinted(input / 1000, '44.278')
    asPrinted((40000 / input) * 100, '90.3')
    exactly(lineCurrent({ shaftPower: 40000, lineVoltage: 415, powerFactor: 0.88, efficiency: 0.90338 }), 70)
  })

  it('230 V, 7 A, pf 0.8, 2.5 hp: 2 230.9 W in, 83.60 % (open textbook companion 3640, Ex. 1.1)', () => {
    const input = threePhaseInput({ lineVoltage: 230, current: 7, powerFactor: 0.8 })
    asPrinted(input, '2230.9')
    asPrinted(((2.5 * 746) / input) * 100, '83.60')
  })

  it('460 V, 25 A, pf 0.85, 2 750 W lost: 16 930.8 W in, 19.009 hp out (same, Ex. 4.1)', () => {
    const input = threePhaseInput({ lineVoltage: 460, current: 25, powerFactor: 0.85 })
    const output = input - (1000 + 500 + 800 + 250 + 200)
    exactly(input, 16930.8)
    exactly(output, 14180.8)
    asPrinted((output / input) * 100, '83.757')
    const current = lineCurrent({
      shaftPower: output,
      lineVoltage: 460,
      powerFactor: 0.85,
      efficiency: output / input,
    })
    exactly(current, 25)
    asPrinted(output / 746, '19.009') // 746 W to the horsepower
  })

  // A public page prints 11.74 A for 10 hp at 480 V, 90 %, pf 0.85, a slip: 746 W to the horsepower gives
  // 11.729.
  it('10 hp at 480 V, 90 %, pf 0.85: 11.729 A', () => {
    asPrinted(
      lineCurrent({ shaftPower: 7460, lineVoltage: 480, powerFactor: 0.85, efficiency: 0.9 }),
      '11.729',
    )
  })
})

describe('battery current', () => {
  it('1 200 W, inverter 0.85, 10.5 V: 134.45 A, 168 A with 25 % on it (battery–inverter wiring note)', () => {
    const current = dcCurrent({
      shaftPower: 1200,
      lowestVoltage: 10.5,
      motorEfficiency: 1,
      inverterEfficiency: 0.85,
    })
    exactly(1.25 * current, 168.067)
    // 1200 W / 0.85, definition of efficiency.
    expect(dcPower({ shaftPower: 1200, motorEfficiency: 1, inverterEfficiency: 0.85 })).toBeCloseTo(
      1411.765,
      3,
    )
    asPrinted(1.25 * current, '168')
  })

  it('gives the shaft power back through both efficiencies', () => {
    const positive = fc.double({ min: 1, max: 1e6, noNaN: true })
    const efficiency = fc.double({ min: 0.1, max: 1, noNaN: true })
    fc.assert(
      fc.property(positive, positive, efficiency, efficiency, (shaftPower, volts, motor, inverter) => {
        const given = {
          shaftPower,
          lowestVoltage: volts,
          motorEfficiency: motor,
          inverterEfficiency: inverter,
        }
        exactly(dcCurrent(given) * volts * motor * inverter, shaftPower)
      }),
    )
  })
})

describe('inverter voltage', () => {
  // A phase peak of half the DC voltage times 2/√3 = 1.1547 (overmodulation documentation); between lines √3 of that, rms over √2.
  it('is 0.7071 of the DC voltage', () => {
    asPrinted(inverterVoltage(1).volts, '0.7071')
    exactly(inverterVoltage(96).volts, (48 * 1.1547005 * Math.sqrt(3)) / Math.SQRT2)
  })

  it('is never given without saying that it is an assumption', () => {
    expect(inverterVoltage(96).assumptions).toHaveLength(2)
  })
})

describe('bad numbers', () => {
  const dc = { shaftPower: 1e4, lowestVoltage: 80, motorEfficiency: 0.9, inverterEfficiency: 0.95 }
  const ac = { shaftPower: 1e4, lineVoltage: 60, powerFactor: 0.9, efficiency: 0.9 }

  it.each(badNumbers)('%s is refused', (bad) => {
    for (const name of Object.keys(dc)) expect(() => dcCurrent({ ...dc, [name]: bad })).toThrow(OutOfRange)
    for (const name of Object.keys(ac)) expect(() => lineCurrent({ ...ac, [name]: bad })).toThrow(OutOfRange)
    expect(() => threePhaseInput({ ...ac, current: bad })).toThrow(OutOfRange)
    expect(() => inverterVoltage(bad)).toThrow(OutOfRange)
  })

  it('an efficiency in per cent is refused', () => {
    expect(() => dcCurrent({ ...dc, motorEfficiency: 90 })).toThrow(OutOfRange)
    expect(() => lineCurrent({ ...ac, powerFactor: 1.01 })).toThrow(OutOfRange)
  })
})
