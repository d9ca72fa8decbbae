import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  adiabaticConstant,
  insulationLimits,
  isAdiabatic,
  sectionToWithstand,
  temperaturesIfUnknown,
  withstand,
  withstandTime,
} from '../../../server/src/engineering/electrical/withstand.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { relative } from './network-helpers.ts'
import { asPrinted, badNumbers, exactly } from './outside.ts'

const perMm2 = (k: number) => k / 1e6

describe('the adiabatic constant of copper', () => {
  it.each(Object.entries(insulationLimits))(
    '%s: as the table of IEC 60364-5-54 and BS 7671 prints it',
    (_, limit) => {
      asPrinted(perMm2(adiabaticConstant(limit)), `${limit.printed}`)
    },
  )

  it.each([
    ['pvc 70', 115.0],
    ['pvc 70, above 300 mm²', 102.8],
    ['pvc 90', 99.88],
    ['pvc 90, above 300 mm²', 85.55],
    ['xlpe 90', 143.08],
    ['rubber 60', 140.94],
    ['rubber 85', 134.17],
    ['silicone 180', 132.49],
  ] as const)('%s: %d by the law', (name, k) => {
    relative(perMm2(adiabaticConstant(insulationLimits[name])), k, 1e-4)
  })

  it('105 °C: 134.8 up to 250 °C, 87.6 up to 160 °C, which is taken where the material is not stated', () => {
    asPrinted(perMm2(adiabaticConstant({ initialC: 105, finalC: 250 })), '134.8')
    asPrinted(perMm2(adiabaticConstant(temperaturesIfUnknown(105))), '87.6')
  })

  it('is never more for a material that is not known than for any in the table', () => {
    for (const { initialC, finalC, printed } of Object.values(insulationLimits))
      if (initialC <= 150 && finalC >= 160) {
        const unknown = adiabaticConstant(temperaturesIfUnknown(initialC))
        expect(perMm2(unknown)).toBeLessThanOrEqual(printed + 0.2)
      }
  })

  it('falls with the temperature before and rises with that after', () => {
    const three = fc.uniqueArray(fc.integer({ min: -50, max: 390 }), { minLength: 3, maxLength: 3 })
    fc.assert(
      fc.property(three, (temperatures) => {
        const [a = 0, b = 0, c = 0] = temperatures.toSorted((x, y) => x - y)
        const all = adiabaticConstant({ initialC: a, finalC: c })
        expect(all).toBeGreaterThan(adiabaticConstant({ initialC: b, finalC: c }))
        expect(all).toBeGreaterThan(adiabaticConstant({ initialC: a, finalC: b }))
        // The heat from a to c is that from a to b and from b to c.
        relative(
          adiabaticConstant({ initialC: a, finalC: b }) ** 2 +
            adiabaticConstant({ initialC: b, finalC: c }) ** 2,
          all ** 2,
          1e-9,
        )
      }),
    )
  })

  it('refuses temperatures that do not rise', () => {
    expect(() => adiabaticConstant({ initialC: 160, finalC: 160 })).toThrow(OutOfRange)
    expect(() => adiabaticConstant({ initialC: 160, finalC: 70 })).toThrow(OutOfRange)
    expect(() => temperaturesIfUnknown(Number.NaN)).toThrow(OutOfRange)
    expect(() => temperaturesIfUnknown(160)).toThrow(OutOfRange)
  })
})

describe('the section that a short circuit asks for', () => {
  it.each([
    [0.2, '37.5'],
    [0.02, '11.9'],
  ])('12 kA for %d s, k 143: %s mm² (public short-circuit sizing page)', (time, printed) => {
    asPrinted(sectionToWithstand({ current: 12_000, time, k: 143e6 }) * 1e6, printed)
  })

  it('bears just that current for that time', () => {
    const any = fc.double({ min: 1, max: 1e4, noNaN: true })
    fc.assert(
      fc.property(any, any, (current, time) => {
        const area = sectionToWithstand({ current, time, k: 115e6 })
        relative(withstandTime({ area, k: 115e6, current }), time, 1e-9)
        relative(withstand({ area, k: 115e6 }), current ** 2 * time, 1e-9)
      }),
    )
  })

  it('is computed without loss of heat up to 5 s', () => {
    expect([0.01, 5, 5.01].map(isAdiabatic)).toEqual([true, true, false])
  })

  it('needs numbers above zero', () => {
    for (const bad of badNumbers) {
      expect(() => withstand({ area: bad, k: 115e6 })).toThrow(OutOfRange)
      expect(() => withstandTime({ area: 1e-6, k: 115e6, current: bad })).toThrow(OutOfRange)
      expect(() => sectionToWithstand({ current: 1, time: bad, k: 115e6 })).toThrow(OutOfRange)
    }
    exactly(withstand({ area: 1e-6, k: 115e6 }), 115 ** 2)
  })
})
