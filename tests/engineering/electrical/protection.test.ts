import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { faultCurrent } from '../../../server/src/engineering/electrical/fault-current.ts'
import { leastFault } from '../../../server/src/engineering/electrical/least-fault.ts'
import {
  conductorLimit,
  judgeConductor,
  judgeRating,
  largestRating,
  protectionWindow,
} from '../../../server/src/engineering/electrical/protection.ts'
import {
  smallestStandardRating,
  standardRatings,
} from '../../../server/src/engineering/electrical/standard-ratings.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

describe('protection window', () => {
  it('30 A continuous in 8 AWG of 40 A: 37.5 to 40, a 40 A fuse (battery–inverter fuse tutorial)', () => {
    const window = protectionWindow({ current: 30, ampacity: 40, volts: 12 })
    exactly(window.low, 37.5)
    exactly(window.high, 40)
    expect(smallestStandardRating(window.low, 'us')).toBe(40)
    expect(judgeRating(40, window, 'us')).toBe('within')
  })

  // 33 CFR 183.455(c)(1): under 50 V up to 150 % of the ampacity outright.
  it('under 50 V bears any rating to 150 %', () => {
    const window = protectionWindow({ current: 80, ampacity: 120, volts: 48 })
    expect([110, 150, 180, 181].map((rating) => judgeRating(rating, window, 'us'))).toEqual([
      'within',
      'allowed-above',
      'allowed-above',
      'above-conductor',
    ])
  })

  // 33 CFR 183.455(c)(2): from 50 V up only the next standard size, and that if not above 150 %. A 96 V bank
  // falls here.
  it('from 50 V up bears the next standard rating only', () => {
    const window = protectionWindow({ current: 80, ampacity: 120, volts: 50 })
    expect([99, 100, 120, 125, 150, 180].map((rating) => judgeRating(rating, window, 'us'))).toEqual([
      'below-load',
      'within',
      'within',
      'allowed-above',
      'above-conductor',
      'above-conductor',
    ])
  })

  it('bears no next rating past 150 %, nor one where the ampacity is itself a standard rating', () => {
    const small = protectionWindow({ current: 1.2, ampacity: 1.9, volts: 96 })
    expect(judgeRating(3, small, 'us')).toBe('above-conductor') // 158 %
    const standard = protectionWindow({ current: 80, ampacity: 125, volts: 96 })
    expect(judgeRating(150, standard, 'us')).toBe('above-conductor')
  })

  it('takes a rating that meets a worked-out limit to meet it', () => {
    // 0.7 · 0.1 · 1 000 is 70 and some bits of a double, 0.58 · 50 is 28.999999999999996.
    expect(judgeRating(29, protectionWindow({ current: 20, ampacity: 0.58 * 50, volts: 96 }), 'us')).toBe(
      'within',
    )
    expect(smallestStandardRating(0.7 * 0.1 * 1000, 'us')).toBe(70)
  })

  it('leaves no rating where the conductor is too small for its load', () => {
    const rating = fc.double({ min: 1, max: 2000, noNaN: true })
    fc.assert(
      fc.property(
        rating,
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.constantFrom(12, 96),
        (amps, current, volts) => {
          const window = protectionWindow({ current, ampacity: current / 1.5, volts })
          expect(judgeRating(amps, window, 'iec')).toMatch(/^(below-load|above-conductor)$/)
        },
      ),
    )
  })
})

describe('standard ratings', () => {
  it('168.067 A is met by 175 A in the US and 200 A by R10 (battery–inverter wiring note)', () => {
    expect(smallestStandardRating(168.067, 'us')).toBe(175)
    expect(smallestStandardRating(168.067, 'iec')).toBe(200)
  })

  // R10: 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8. The fuse list rounds it: 6, 12 is absent, 32, 63.
  it('the IEC list keeps to the R10 numbers within 5 %', () => {
    for (const amps of standardRatings.iec.amps) {
      const steps = 10 * Math.log10(amps)
      expect(Math.abs(10 ** ((steps - Math.round(steps)) / 10) - 1)).toBeLessThan(0.05)
    }
  })

  it.each(['us', 'iec'] as const)('the %s list rises, and every rating answers for itself', (series) => {
    const { amps } = standardRatings[series]
    expect([...amps].sort((a, b) => a - b)).toEqual(amps)
    for (const rating of amps) expect(smallestStandardRating(rating, series)).toBe(rating)
  })

  it('ends where the list ends', () => {
    expect(smallestStandardRating(1201, 'us')).toBeUndefined()
    expect(smallestStandardRating(631, 'iec')).toBeUndefined()
  })
})

describe('fault current', () => {
  it('100 A of gG opens for certain from 160 A on (conventional fusing current, IEC 60269-1, from memory)', () =>
    expect(leastFault(100)).toBeCloseTo(160, 9))

  it('12 V over 5 mΩ: 2 400 A (battery fault tutorial)', () => {
    exactly(faultCurrent({ voltage: 12, internalResistance: 0.005 }), 2400)
  })

  it('14 V over four cells of 0.75 mΩ and three jumpers of 0.25 mΩ: 3 733 A; one cell 4 667 A (off-road electrical forum)', () => {
    exactly(faultCurrent({ voltage: 14, internalResistance: 0.00375 }), 3733.333)
    const cell = faultCurrent({ voltage: 3.5, internalResistance: 0.75e-3 })
    exactly(cell, 4666.667)
    asPrinted(cell, '4667')
  })

  it('six 6 V units of 2 400 A, 2 in series by 3: 7 200 A (ABYC-based interrupting-capacity note)', () => {
    exactly(faultCurrent({ voltage: 12, internalResistance: (2 * (6 / 2400)) / 3 }), 7200)
  })
})

describe('bad numbers', () => {
  const window = protectionWindow({ current: 30, ampacity: 40, volts: 96 })

  it.each(badNumbers)('%s is refused', (bad) => {
    expect(() => protectionWindow({ current: bad, ampacity: 40, volts: 96 })).toThrow(OutOfRange)
    expect(() => protectionWindow({ current: 30, ampacity: bad, volts: 96 })).toThrow(OutOfRange)
    expect(() => protectionWindow({ current: 30, ampacity: 40, volts: bad })).toThrow(OutOfRange)
    expect(() => judgeRating(bad, window, 'us')).toThrow(OutOfRange)
    expect(() => smallestStandardRating(bad, 'us')).toThrow(OutOfRange)
    expect(() => faultCurrent({ voltage: bad, internalResistance: 1 })).toThrow(OutOfRange)
    expect(() => faultCurrent({ voltage: 1, internalResistance: bad })).toThrow(OutOfRange)
  })
})

// 33 CFR 183.455(c): what protects a conductor at one rating protects it at every lesser one.
it('a rating below one that protects the conductor protects it too', () => {
  const amps = fc.double({ min: 1, max: 600, noNaN: true })
  fc.assert(
    fc.property(
      amps,
      fc.constantFrom(12, 48, 96),
      fc.constantFrom('us', 'iec'),
      amps,
      amps,
      (ampacity, volts, series, a, b) => {
        const limit = conductorLimit({ ampacity, volts })
        const [lesser, greater] = a < b ? [a, b] : [b, a]
        if (judgeConductor(greater, limit, series) !== 'above-conductor')
          expect(judgeConductor(lesser, limit, series)).not.toBe('above-conductor')
      },
    ),
  )
  // A conductor that carries 331 A: 350 A lies below the next standard rating, 400 A.
  const limit = conductorLimit({ ampacity: 331, volts: 96 })
  expect([350, 400].map((rating) => judgeConductor(rating, limit, 'iec'))).toEqual([
    'allowed-above',
    'allowed-above',
  ])
})

// 33 CFR 183.455(c): under 50 V 150 % outright; above, the next standard rating (NEC 240.6(A)) where that is not beyond 150 %.
it('the largest rating is 150 % under 50 V, above it the next standard rating', () => {
  expect(largestRating(conductorLimit({ ampacity: 120, volts: 12 }), 'us')).toBeCloseTo(180, 9)
  expect(largestRating(conductorLimit({ ampacity: 120, volts: 96 }), 'us')).toBe(125)
  // No standard rating from 1201 A up.
  expect(largestRating(conductorLimit({ ampacity: 1300, volts: 96 }), 'us')).toBe(1300)
})
