import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bisect, firstCrossing } from '../../../server/src/engineering/propulsion/bisect.ts'
import { dischargeRate, stringCurrents } from '../../../server/src/engineering/propulsion/discharge.ts'
import {
  continuousTorque,
  knownTorque,
  motorSpeeds,
} from '../../../server/src/engineering/propulsion/motor-limit.ts'
import { openWater } from '../../../server/src/engineering/propulsion/propeller-series.ts'
import { idleSpeed, turningAt } from '../../../server/src/engineering/propulsion/turning-propeller.ts'
import { thrustTerms, torqueTerms } from '../../../server/src/engineering/propulsion/wageningen-terms.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'

describe('a root', () => {
  it('is found wherever it is', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e3, max: 1e3, noNaN: true }), (root) => {
        expect(bisect((x) => x - root, -1e3, 1e3)).toBeCloseTo(root, 9)
        expect(bisect((x) => (x - root) ** 3, -1e3, 1e3)).toBeCloseTo(root, 3)
      }),
    )
  })

  it('is the first of several, the low end if the function begins above, none if it stays below', () => {
    expect(firstCrossing((x) => Math.sin(x) - 0.5, 0, 10, 100)).toBeCloseTo(Math.PI / 6, 9)
    expect(firstCrossing(() => 1, 2, 3, 10)).toBe(2)
    expect(firstCrossing(() => -1, 2, 3, 10)).toBeUndefined()
  })
})

describe('the limit of a motor', () => {
  const motor = { ratedTorque: 95, ratedSpeed: 150, maxSpeed: 300, share: 1 }

  // Constant torque up to the rated speed, constant power above (definition).
  it('is constant torque, then constant power, then nothing', () => {
    expect([0, 150, 300, 301].map((speed) => continuousTorque(motor, speed))).toEqual([95, 95, 47.5, 0])
    expect(continuousTorque({ ...motor, share: 0.5 }, 100)).toBe(47.5)
  })

  it('follows its curve, and ends with it', () => {
    const curve = [
      { at: 50, value: 90 },
      { at: 250, value: 50 },
    ]
    expect(motorSpeeds({ ...motor, curve })).toEqual({ low: 50, high: 250 })
    expect([49, 50, 150, 250, 251].map((speed) => continuousTorque({ ...motor, curve }, speed))).toEqual([
      0, 90, 70, 50, 0,
    ])
    expect(motorSpeeds({ ...motor, maxSpeed: 200, curve })).toEqual({ low: 50, high: 200 })
    expect(motorSpeeds({ ...motor, curve: [...curve, { at: 280, value: 40 }] })).toEqual({
      low: 50,
      high: 280,
    })
  })

  it('is not known before its curve begins and after it ends, and nothing above its highest speed', () => {
    const curve = [
      { at: 50, value: 90 },
      { at: 250, value: 50 },
    ]
    expect([49, 50, 250, 251, 300, 301].map((speed) => knownTorque({ ...motor, curve }, speed))).toEqual([
      undefined,
      90,
      50,
      undefined,
      undefined,
      0,
    ])
    expect([0, 300, 301].map((speed) => knownTorque(motor, speed))).toEqual([95, 47.5, 0])
    // The maker's highest speed counts where the curve goes on.
    expect(knownTorque({ ...motor, maxSpeed: 200, curve }, 201)).toBe(0)
  })

  it('is refused where it is none', () => {
    expect(() => continuousTorque({ ...motor, share: 0 }, 100)).toThrow(OutOfRange)
    expect(() => continuousTorque({ ...motor, ratedTorque: -1 }, 100)).toThrow(OutOfRange)
  })
})

it('the strings of a bank share a current by their capacity', () => {
  const [large, small] = stringCurrents(
    [
      { capacity: 2 * 360e3, nominal: 96, usable: 0.8 },
      { capacity: 360e3, nominal: 96, usable: 0.8 },
    ],
    96 * 150,
  )
  expect([large, small]).toEqual([100, 50])
})

// Definition of the C-rate: at 1 the capacity is drawn in an hour, so 96 V · 210 Ah gives 20.16 kW.
it('the C-rate is 1 where the capacity is drawn in an hour, in a bank of any strings', () => {
  const string = { capacity: 210 * 3600, nominal: 96, usable: 0.8 }
  expect(dischargeRate([string], 20_160)).toBeCloseTo(1, 12)
  expect(dischargeRate([string, { ...string, capacity: 105 * 3600 }], 20_160)).toBeCloseTo(2 / 3, 12)
  expect(() => dischargeRate([], 1)).toThrow(OutOfRange)
})

it('a propeller that idles gives no thrust, and one that turns more slowly is refused', () => {
  const propeller = {
    openWater: openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }),
    diameter: 0.5,
    density: 1025,
  }
  const idle = idleSpeed(propeller, 3)
  expect(turningAt(propeller, 3, idle).thrust).toBeCloseTo(0, 6)
  expect(() => turningAt(propeller, 3, 0.9 * idle)).toThrow(OutOfRange)
})

// Oosterveld & van Oossanen 1975: 39 terms for the thrust, 47 for the torque.
it('the polynomial of the series has all its terms', () => {
  expect([thrustTerms.length, torqueTerms.length]).toEqual([39, 47])
})
