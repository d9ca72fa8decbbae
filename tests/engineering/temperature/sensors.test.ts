import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ktyRange, ktyResistance, ktyTemperature } from '../../../server/src/engineering/temperature/kty84.ts'
import {
  type SensorCurve,
  sensorRange,
  sensorReading,
  sensorResistance,
} from '../../../server/src/engineering/temperature/sensor-curve.ts'
import {
  classTemperature,
  thermalClasses,
} from '../../../server/src/engineering/temperature/thermal-class.ts'
import {
  thermistorBeta,
  thermistorRange,
  thermistorResistance,
  thermistorTemperature,
} from '../../../server/src/engineering/temperature/thermistor.ts'
import { tripPtcLimit } from '../../../server/src/engineering/temperature/trip-ptc.ts'
import {
  copperConstant,
  windingTemperature,
} from '../../../server/src/engineering/temperature/winding-temperature.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'

describe('a silicon sensor KTY84-130', () => {
  it('has 1000, 581 and 1334 Ω at 100, 20 and 150 °C: table 1 of its data sheet, in an open firmware', () => {
    expect([100, 20, 150].map(ktyResistance)).toEqual([1000, 581, 1334])
    expect([1000, 581, 1334].map(ktyTemperature)).toEqual([100, 20, 150])
  })

  it('meets the fit of a second open firmware within 0.15 % up to 200 °C', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 200, noNaN: true }), (celsius) => {
        const fit = 603 * (1 + 7.418e-3 * (celsius - 25) + 1.815e-5 * (celsius - 25) ** 2)
        expect(Math.abs(ktyResistance(celsius) / fit - 1)).toBeLessThan(1.5e-3)
      }),
    )
  })

  it('is known for nothing beyond its table', () => {
    for (const celsius of [ktyRange.low - 1, ktyRange.high + 1, Number.NaN])
      expect(() => ktyResistance(celsius)).toThrow(OutOfRange)
    for (const ohms of [0, 358, 2625, Number.NaN]) expect(() => ktyTemperature(ohms)).toThrow(OutOfRange)
  })
})

describe('a thermistor', () => {
  // R25 10 kΩ, B 3380 K: a pair of parameters in a frequently asked question; the figures are computed from it.
  it.each([
    [0, 28_224],
    [50, 4160],
    [100, 1024],
    [120, 646],
  ])('of 10 kΩ and 3380 K has at %s °C %s Ω', (celsius, ohms) => {
    expect(Math.abs(thermistorResistance({ celsius, r25: 10e3, beta: 3380 }) / ohms - 1)).toBeLessThan(1e-3)
  })

  it('of 20 kΩ at 373 K and 3650 K is at 598.7 K where it has 500 Ω: solution 8.5 of a textbook', () => {
    // The same law from another point: R25 follows from it.
    const r25 = 20e3 * Math.exp(3650 * (1 / 298.15 - 1 / 373))
    expect(thermistorTemperature({ ohms: 500, r25, beta: 3650 }) + 273.15).toBeCloseTo(598.7, 1)
  })

  it('has the B of any two of its points', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 24, noNaN: true }),
        fc.double({ min: 26, max: 200, noNaN: true }),
        (t1, t2) => {
          const point = (celsius: number) => ({
            celsius,
            ohms: thermistorResistance({ celsius, r25: 10e3, beta: 3950 }),
          })
          expect(thermistorBeta(point(t1), point(t2))).toBeCloseTo(3950, 4)
        },
      ),
    )
  })

  it('has none of one point', () => {
    const one = { celsius: 25, ohms: 1e4 }
    expect(() => thermistorBeta(one, one)).toThrow(OutOfRange)
  })
})

describe('a trip PTC', () => {
  it('keeps the limits of DIN 44081, as instructions of a motor quote it', () => {
    const at = (celsius: number, count = 1) => tripPtcLimit({ celsius, switchesAt: 145, count })
    expect(at(140)).toEqual({ high: 550 })
    expect(at(150)).toEqual({ low: 1330 })
    expect(at(160)).toEqual({ low: 4000 })
    expect(at(145)).toEqual({})
    expect(at(20, 3)).toEqual({ high: 1650 })
  })
})

describe('any sensor', () => {
  const curves: readonly SensorCurve[] = [
    { kind: 'platinum', r0: 100 },
    { kind: 'platinum', r0: 1000 },
    { kind: 'kty84-130' },
    { kind: 'ntc', r25: 10e3, beta: 3380 },
    {
      kind: 'points',
      points: [
        { celsius: 0, ohms: 28_224 },
        { celsius: 50, ohms: 4160 },
        { celsius: 100, ohms: 1024 },
      ],
    },
    {
      kind: 'points',
      points: [
        { celsius: -20, ohms: 700 },
        { celsius: 180, ohms: 2000 },
      ],
    },
  ]

  it.each(curves)('%o gives back its temperature from its resistance, and turns nowhere', (curve) => {
    const range = sensorRange(curve) ?? { low: 0, high: 0 }
    const rises =
      (sensorResistance(curve, range.high) ?? 0) > (sensorResistance(curve, range.low) ?? 0) ? 1 : -1
    fc.assert(
      fc.property(fc.double({ min: range.low, max: range.high, noNaN: true }), (celsius) => {
        const ohms = sensorResistance(curve, celsius) ?? Number.NaN
        const read = sensorReading(curve, ohms)
        // The ends themselves may round to beyond.
        expect(read?.is === 'temperature' ? read.celsius : read?.end).toBeCloseTo(celsius, 4)
        const warmer = sensorResistance(curve, Math.min(celsius + 1, range.high)) ?? Number.NaN
        expect(Math.sign(warmer - ohms) * rises).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it.each(curves)(
    '%o says on which side it is beyond its range, at no resistance and at an open wire',
    (curve) => {
      const range = sensorRange(curve) ?? { low: 0, high: 0 }
      const falls = (sensorResistance(curve, range.high) ?? 0) < (sensorResistance(curve, range.low) ?? 0)
      expect(sensorReading(curve, 0)?.is).toBe(falls ? 'hotter' : 'colder')
      expect(sensorReading(curve, 1e12)?.is).toBe(falls ? 'colder' : 'hotter')
      expect(sensorResistance(curve, range.high + 1)).toBeUndefined()
      expect(sensorResistance(curve, Number.NaN)).toBeUndefined()
      expect(() => sensorReading(curve, Number.NaN)).toThrow(OutOfRange)
    },
  )

  it('of points that are the law of one B is that law between them too', () => {
    const law = { kind: 'ntc', r25: 10e3, beta: 3380 } as const
    const points = [0, 100].map((celsius) => ({ celsius, ohms: thermistorResistance({ ...law, celsius }) }))
    expect(sensorResistance({ kind: 'points', points }, 60)).toBeCloseTo(sensorResistance(law, 60) ?? 0, 6)
  })

  it.each([
    [[]],
    [[{ celsius: 20, ohms: 100 }]],
    [
      [
        { celsius: 20, ohms: 100 },
        { celsius: 40, ohms: 100 },
      ],
    ],
    [
      [
        { celsius: 20, ohms: 0 },
        { celsius: 40, ohms: 100 },
      ],
    ],
    [
      [
        { celsius: 40, ohms: 100 },
        { celsius: 20, ohms: 200 },
      ],
    ],
    [
      [
        { celsius: 0, ohms: 300 },
        { celsius: 20, ohms: 100 },
        { celsius: 40, ohms: 200 },
      ],
    ],
  ])('of the points %o has no curve', (points) => {
    const curve: SensorCurve = { kind: 'points', points }
    expect(sensorRange(curve)).toBeUndefined()
    expect(sensorReading(curve, 100)).toBeUndefined()
  })

  it('of the law of one B is known from -55 to 200 °C', () => {
    expect(thermistorRange).toEqual({ low: -55, high: 200 })
  })
})

describe('a winding', () => {
  it('that goes from 80 Ω at 20 °C to 100 Ω rose by 63.63 K with the constant 234.5: a public forum', () => {
    const hot = windingTemperature({ cold: 80, celsius: 20, hot: 100, constant: 234.5 })
    expect(hot - 20).toBeCloseTo(63.625, 9)
  })

  it('of the same resistance is as warm as before', () => {
    expect(windingTemperature({ cold: 0.014, celsius: 18, hot: 0.014 })).toBeCloseTo(18, 9)
    expect(copperConstant).toBe(235)
  })

  it('of no resistance is none', () => {
    expect(() => windingTemperature({ cold: 0, celsius: 20, hot: 1 })).toThrow(OutOfRange)
    expect(() => windingTemperature({ cold: 1, celsius: 20, hot: 1e9 })).toThrow(OutOfRange)
  })

  it('stands the temperature of its class: IEC 60085, in motor manuals', () => {
    expect(thermalClasses.map(classTemperature)).toEqual([105, 120, 130, 155, 180, 200, 220])
    expect(classTemperature('F')).toBe(155)
  })
})
