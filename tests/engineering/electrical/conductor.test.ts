import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  conductorResistance,
  copperResistivity,
  resistanceAt,
  sectionArea,
} from '../../../server/src/engineering/electrical/conductor.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

describe('copper', () => {
  it('resistivity at 20 °C is 0.0172414 Ω·mm²/m (IEC 60028)', () =>
    exactly(copperResistivity * 1e6, 0.0172414))

  // 0.00393 per kelvin (IEC 60028): arithmetic of the definition.
  it.each([
    [70, '1.1965'],
    [90, '1.2751'],
    [105, '1.3341'],
  ])('at %i °C has %s times its resistance at 20 °C', (conductorC, factor) => {
    asPrinted(resistanceAt({ resistance: 1, conductorC }), factor)
  })

  // IEC 60228 correction table, whose coefficient is 0.004: to 20 °C from 50 °C and from 90 °C.
  it.each([
    [50, '0.893'],
    [90, '0.781'],
  ])('corrects a reading at %i °C to 20 °C by %s (IEC 60228)', (conductorC, factor) => {
    asPrinted(1 / resistanceAt({ resistance: 1, conductorC, coefficient: 0.004 }), factor)
  })

  it('10 Ω at 20 °C is 13.2 Ω at 100 °C (Bird, Electrical Circuit Theory and Technology, Problem 3.11)', () => {
    exactly(resistanceAt({ resistance: 10, conductorC: 100, coefficient: 0.004 }), 13.2)
  })

  // From 0 °C Bird takes 0.0043; 0.00427 would follow from 0.00393 at 20 °C.
  it('100 Ω at 0 °C is 130.1 Ω at 70 °C (Bird, Problem 3.08)', () => {
    exactly(resistanceAt({ resistance: 100, referenceC: 0, conductorC: 70, coefficient: 0.0043 }), 130.1)
  })
})

describe('conductor resistance', () => {
  // IEC 60228:2004, Ω/km at 20 °C, as reproduced by four independent cable references.
  it.each([
    [1.5, 12.1, 12.2, 13.3, 13.7],
    [2.5, 7.41, 7.56, 7.98, 8.21],
    [4, 4.61, 4.7, 4.95, 5.09],
    [6, 3.08, 3.11, 3.3, 3.39],
    [10, 1.83, 1.84, 1.91, 1.95],
    [16, 1.15, 1.16, 1.21, 1.24],
    [25, 0.727, 0.734, 0.78, 0.795],
    [35, 0.524, 0.529, 0.554, 0.565],
    [50, 0.387, 0.391, 0.386, 0.393],
    [70, 0.268, 0.27, 0.272, 0.277],
    [95, 0.193, 0.195, 0.206, 0.21],
    [120, 0.153, 0.154, 0.161, 0.164],
    [150, 0.124, 0.126, 0.129, 0.132],
    [185, 0.0991, 0.1, 0.106, 0.108],
    [240, 0.0754, 0.0762, 0.0801, 0.0817],
  ])('%s mm² is as in IEC 60228:2004', (mm2, plain2, tinned2, plain5, tinned5) => {
    const at = (strands: 'class 2' | 'class 5', finish: 'plain' | 'tinned') =>
      conductorResistance({ section: { system: 'metric', mm2 }, strands, finish }).ohmPerMetre * 1000
    exactly(at('class 2', 'plain'), plain2)
    exactly(at('class 2', 'tinned'), tinned2)
    exactly(at('class 5', 'plain'), plain5)
    exactly(at('class 5', 'tinned'), tinned5)
  })

  it('finds the row of a size that came through square metres', () => {
    const metric = (mm2: number) => conductorResistance({ section: { system: 'metric', mm2 } })
    for (const mm2 of [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240]) {
      expect(metric(mm2 * 1e-6 * 1e6).ohmPerMetre).toBe(metric(mm2).ohmPerMetre)
    }
  })

  // IEC 60228:2004 class 5 plain, 300 mm²: 0.0641 Ω/km, from memory. Copper of 300 mm² would have 0.0575.
  it('a metric size without a row is no better than the standard has it', () => {
    const given = { section: { system: 'metric', mm2: 300 }, strands: 'class 5', finish: 'plain' } as const
    const { ohmPerMetre, assumptions } = conductorResistance(given)
    expect(ohmPerMetre).toBeGreaterThanOrEqual(0.0641e-3)
    expect(ohmPerMetre).toBeLessThan(0.0641e-3 * 1.05)
    expect(assumptions).toHaveLength(1)
  })

  // IEC 60228 class 5, tinned, 35 mm²: 0.565 Ω/km. More copper has no more resistance, whatever the row of another size would scale to.
  it('a size just above a row is no worse than the row', () =>
    expect(conductorResistance({ section: { system: 'metric', mm2: 35.1 } }).ohmPerMetre).toBeLessThanOrEqual(
      0.565e-3,
    ))

  // Solid 4/0 is 0.161 Ω/km (wire table); strands read about 2 % higher [common practice].
  it('AWG is solid wire and 2 %, tinned another 3 %', () => {
    const section = { system: 'awg', n: -3 } as const
    asPrinted(conductorResistance({ section, finish: 'plain' }).ohmPerMetre * 1000, '0.164')
    asPrinted(conductorResistance({ section, finish: 'tinned' }).ohmPerMetre * 1000, '0.169')
  })

  it('says which of its defaults it took', () => {
    const section = { system: 'metric', mm2: 35 } as const
    expect(conductorResistance({ section }).assumptions).toHaveLength(2)
    expect(conductorResistance({ section, finish: 'plain' }).assumptions).toEqual([
      { type: 'strands-class-5' },
    ])
    // Solid wire of AWG has no class of strands; 2 % for stranding is common practice.
    expect(conductorResistance({ section: { system: 'awg', n: 4 }, finish: 'plain' }).assumptions).toEqual([
      { type: 'stranding-2-percent' },
    ])
    expect(conductorResistance({ section, strands: 'class 5', finish: 'tinned' }).assumptions).toEqual([])
  })

  it('falls as the section grows within one system', () => {
    const size = fc.double({ min: 0.5, max: 400, noNaN: true })
    fc.assert(
      fc.property(fc.integer({ min: -2, max: 18 }), size, (n, mm2) => {
        const awg = (gauge: number) =>
          conductorResistance({ section: { system: 'awg', n: gauge } }).ohmPerMetre
        expect(awg(n - 1)).toBeLessThan(awg(n))
        const metric = (s: number) =>
          conductorResistance({ section: { system: 'metric', mm2: s } }).ohmPerMetre
        expect(metric(mm2 * 1.25)).toBeLessThan(metric(mm2))
      }),
    )
  })
})

describe('bad numbers', () => {
  it.each(badNumbers)('%s is refused', (bad) => {
    expect(() => sectionArea({ system: 'metric', mm2: bad })).toThrow(OutOfRange)
    expect(() => conductorResistance({ section: { system: 'metric', mm2: bad } })).toThrow(OutOfRange)
    expect(() => resistanceAt({ resistance: bad, conductorC: 90 })).toThrow(OutOfRange)
  })

  it.each([Number.NaN, -273.15, 363.15, Number.POSITIVE_INFINITY])('%s °C is refused', (conductorC) => {
    expect(() => resistanceAt({ resistance: 1, conductorC })).toThrow(OutOfRange)
  })

  it('a coefficient or reference of another kind is refused', () => {
    expect(() => resistanceAt({ resistance: 1, conductorC: 90, coefficient: 3.93 })).toThrow(OutOfRange)
    expect(() => resistanceAt({ resistance: 1, conductorC: 90, referenceC: 293.15 })).toThrow(OutOfRange)
  })
})
