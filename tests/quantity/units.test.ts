// Conversions against figures printed in NIST SP 811 (2008), appendix B.8 and B.9, the SI Brochure (9th edition) and ASTM B258.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatAbout, formatBoth, formatNumber, formatSi, inUnit } from '../../server/src/quantity/format.ts'
import { type Kind, kinds } from '../../server/src/quantity/kinds.ts'
import { asKind, combine, parseNumber, quantity, readQuantity } from '../../server/src/quantity/quantity.ts'
import { findUnit, gaugeArea, otherSpellings, saeArea, units } from '../../server/src/quantity/units.ts'

const si = (number: string, unit: string): number => {
  const outcome = readQuantity(number, unit)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem))
  return outcome.value.si
}

describe('NIST SP 811, appendix B.8: to convert from, multiply by', () => {
  // Bold figures there are exact; the others have seven digits.
  it.each([
    ['in', 2.54e-2],
    ['ft', 3.048e-1],
    ['thou', 2.54e-5],
    ['nmi', 1.852e3],
    ['in2', 6.4516e-4],
    ['cmil', 5.067075e-10],
    ['lb', 4.535924e-1],
    ['oz', 2.834952e-2],
    ['lbf', 4.448222],
    ['lbf·ft', 1.355818],
    ['lbf·in', 1.129848e-1],
    ['hp', 7.456999e2],
    ['psi', 6.894757e3],
    ['ksi', 6.894757e6],
    ['bar', 1e5],
    ['kn', 5.144444e-1],
    ['km/h', 2.777778e-1],
    ['ft/s', 3.048e-1],
    ['rpm', 1.047198e-1],
    ['deg', 1.745329e-2],
    ['Ah', 3.6e3],
    ['kWh', 3.6e6],
    ['g/cm3', 1e3],
  ])('1 %s is %d in SI', (unit, expected) => {
    expect(si('1', unit) / expected).toBeCloseTo(1, 6)
  })
})

describe('SI Brochure, 9th edition', () => {
  it.each([
    ['min', 60],
    ['h', 3600],
    ['d', 86400],
    ['t', 1000],
    ['mm', 1e-3],
    ['µm', 1e-6],
    ['kN', 1e3],
    ['MPa', 1e6],
    ['mF', 1e-3],
    ['mohm', 1e-3],
    ['kA', 1e3],
  ])('1 %s is %d in SI (tables 7 and 8)', (unit, expected) => {
    expect(si('1', unit)).toBeCloseTo(expected, 12)
  })

  it('has 0 °C at 273.15 K', () => {
    expect(si('0', 'degC')).toBeCloseTo(273.15, 10)
    expect(si('25', '°C')).toBeCloseTo(298.15, 10)
  })
})

describe('degrees Fahrenheit: NIST SP 811, B.8: T/K = (t/°F + 459.67)/1.8', () => {
  it.each([
    ['32', 273.15],
    ['212', 373.15],
    ['-40', 233.15],
    ['-459.67', 0],
  ])('%s °F is %d K', (written, kelvin) => {
    expect(si(written, 'degF')).toBeCloseTo(kelvin, 9)
  })
})

describe('American wire gauge: ASTM B258', () => {
  const inches = (gauge: string) => Math.sqrt(((gaugeArea(gauge) ?? 0) * 4) / Math.PI) / 0.0254

  it.each([
    ['4/0', 0.46], // defines the series
    ['36', 0.005], // defines the series
    ['2/0', 0.3648],
    ['1/0', 0.3249],
    ['2', 0.2576],
    ['6', 0.162],
    ['10', 0.1019],
  ])('%s has a diameter of %d in', (gauge, diameter) => {
    expect(inches(gauge)).toBeCloseTo(diameter, 4)
  })

  // ASTM B258 names the sizes above 1 by as many zeros.
  it.each([
    ['0', '1/0'],
    ['00', '2/0'],
    ['000', '3/0'],
    ['0000', '4/0'],
  ])('%s is %s', (zeros, name) => {
    expect(gaugeArea(zeros)).toBe(gaugeArea(name))
    expect(readQuantity(zeros, 'AWG')).toEqual(readQuantity(name, 'AWG'))
  })

  // Circular mils of SAE cable in the table of ABYC E-11 as reprinted: 6 24 538, 2/0 125 100, 4/0 205 500; 4 to 12 % below the AWG.
  it.each([
    ['14', 3702],
    ['6', 24_538],
    ['2/0', 125_100],
    ['00', 125_100],
    ['4/0', 205_500],
  ])('%s SAE is %d circular mils, less than the AWG of that number', (name, mils) => {
    const area = saeArea(name) ?? 0
    expect(area / ((Math.PI / 4) * 0.0000254 ** 2)).toBeCloseTo(mils, 6)
    const share = area / (gaugeArea(name) ?? 0)
    expect(share).toBeGreaterThan(0.88)
    expect(share).toBeLessThan(0.975)
    expect(formatSi(area, 'area', 'inch')).toBe(`${name === '00' ? '2/0' : name} SAE`)
  })

  it.each(['3', '5/0', '18', '', 'toString', '2.5'])('%j is no SAE gauge', (name) => {
    expect(readQuantity(name, 'SAE')).toEqual({ ok: false, problem: { type: 'not-a-gauge', text: name } })
  })

  it.each(['5/0', '0/0', '41', '-1', '2.5', '', '1/2', '00000', '02', '010'])('%j is none', (name) => {
    expect(readQuantity(name, 'AWG')).toEqual({ ok: false, problem: { type: 'not-a-gauge', text: name } })
  })
})

describe('numbers', () => {
  it.each([
    ['3/4', 0.75],
    ['1-1/4', 1.25],
    ['1\u20111/4', 1.25], // with a hyphen that does not break
    ['1 1/4', 1.25],
    ['-1-1/4', -1.25],
    ['−0.02', -0.02],
    ['1e3', 1000],
    ['15/16', 0.9375],
  ])('%s', (written, value) => {
    expect(parseNumber(written)).toBe(value)
  })

  it.each(['1/0', '1e999', '', ' ', 'x', '1.2.3'])('%j is none', (written) => {
    expect(parseNumber(written)).toBeUndefined()
  })
})

describe('kinds above dimensions', () => {
  const of = (number: string, unit?: string) => {
    const outcome = readQuantity(number, unit)
    if (!outcome.ok) throw new Error(number)
    return outcome.value
  }
  it.each([
    ['torque', 'J'],
    ['energy', 'N·m'],
    ['rotational speed', 'Hz'],
    ['frequency', 'rpm'],
    ['ratio', 'deg'],
    ['length', 'kg'],
  ] as const)('a %s is not read from %s', (kind, unit) => {
    expect(asKind(of('1', unit), kind)).toMatchObject({
      ok: false,
      problem: { type: 'wrong-kind', expected: kind },
    })
  })

  it('an angle is not a plain number, nor a plain number an angle', () => {
    expect(asKind(of('1'), 'angle')).toMatchObject({ ok: false, problem: { type: 'no-unit' } })
  })

  it.each([
    ['3', 'm', '+', '1', 'kg'],
    ['3', 'm', '-', '1', 's'],
    ['3', 'N·m', '+', '1', 'J'],
    ['3', 'Hz', '+', '1', 'rpm'],
    ['20', 'degC', '+', '5', 'degC'],
    ['20', 'degF', '*', '2', '%'],
  ] as const)('%s %s %s %s %s has no value', (a, unitA, operator, b, unitB) => {
    expect(combine(operator, of(a, unitA), of(b, unitB))).toMatchObject({
      ok: false,
      problem: { type: 'cannot-combine' },
    })
  })

  it.each([
    ['12', 'kW', '/', '96', 'V', 'current', 125],
    ['2', 'm', '*', '3', 'm', 'area', 6],
    ['10', 'N', '/', '2', 'mm2', 'pressure', 5e6],
    ['100', 'km', '/', '4', 'h', 'speed', 100 / 14.4],
    ['400', 'N·m', '*', '10', 'rad/s', 'power', 4000],
  ] as const)(
    '%s %s %s %s %s is a quantity by its dimension',
    (a, unitA, operator, b, unitB, kind, expected) => {
      const outcome = combine(operator, of(a, unitA), of(b, unitB))
      const fitted = outcome.ok ? asKind(outcome.value, kind) : outcome
      expect(fitted.ok && fitted.value.si).toBeCloseTo(expected, 9)
    },
  )

  it('division by zero, or past the largest number, is a problem and never an infinity', () => {
    expect(combine('/', of('1', 'm'), of('0'))).toEqual({ ok: false, problem: { type: 'divided-by-zero' } })
    const huge = quantity(1e308, 'length')
    expect(combine('*', huge, huge)).toMatchObject({ ok: false })
    expect(readQuantity('1e308', 'km')).toMatchObject({ ok: false, problem: { type: 'not-a-number' } })
  })
})

describe('the table of units', () => {
  it('has each spelling once', () => {
    const names = units.flatMap((unit) => [unit.name, ...unit.aliases])
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
  })

  it('has the units that results are shown in, each of its kind', () => {
    for (const [kind, { shown }] of Object.entries(kinds))
      for (const name of Object.values(shown)) if (name !== '') expect(findUnit(name)?.kind, name).toBe(kind)
  })

  it('gives back what was written, whatever the unit', () => {
    const measured = units.filter((unit) => !unit.named)
    fc.assert(
      fc.property(
        fc.constantFrom(...measured),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (unit, value) => {
          const back = inUnit(value * unit.si + unit.offset, unit)
          expect(back).toBeCloseTo(value, 5)
        },
      ),
    )
  })
})

describe('results', () => {
  it('are about as much in either system, without digits that nobody knows', () => {
    expect(formatAbout(0.07229, 'length')).toBe('72.3 mm')
    expect(formatAbout(0.07229, 'length', 'inch')).toBe('2.85 in') // 72.29/25.4 = 2.846
  })

  it.each([
    [0.026, 'length', 'metric', '26 mm (1.024 in)'], // 26/25.4 = 1.0236
    [0.0254, 'length', 'inch', '1 in (25.4 mm)'],
    [15000, 'power', 'metric', '15 kW (20.12 hp)'], // 15000/745.6999 = 20.115
    [363.15, 'temperature', 'metric', '90 degC'],
    [0, 'length', 'metric', '0 mm (0 in)'],
  ] as const)('%d as a %s, %s: %s', (value, kind, system, expected) => {
    expect(formatBoth(value, kind as Kind, system)).toBe(expected)
  })

  it('shows a section that is a wire gauge as one where inches are shown', () => {
    expect(formatSi(gaugeArea('2/0') ?? 0, 'area', 'inch')).toBe('2/0 AWG')
    expect(formatSi(35e-6, 'area', 'inch')).toBe('about 2 AWG')
  })

  it('never shows an exponent or a minus zero for what a person would measure', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e8, noNaN: true }), (value) => {
        expect(formatNumber(value)).toMatch(/^\d+(\.\d+)?$/)
      }),
    )
    expect(formatNumber(-0)).toBe('0')
  })
})

// 1 in = 25.4 mm exactly (NIST SP 811, B.8): a sixty-fourth is 0.396875 mm.
describe('a size in inches and fractions', () => {
  it('keeps its size in millimetres to 0.01 mm, and in inches to a thousandth, however large', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 39 * 64 }), (sixtyFourths) => {
        const [mm, inch] = (['metric', 'inch'] as const).map((system) =>
          Number.parseFloat(formatSi((sixtyFourths / 64) * 0.0254, 'length', system)),
        )
        expect(Math.abs((mm ?? 0) - (sixtyFourths * 25.4) / 64)).toBeLessThanOrEqual(0.005 + 1e-9)
        expect(Math.abs((inch ?? 0) - sixtyFourths / 64)).toBeLessThanOrEqual(0.0005 + 1e-9)
      }),
    )
  })

  it('of 5-1/4 is 133.35 mm', () => {
    expect(formatBoth(5.25 * 0.0254, 'length')).toBe('133.35 mm (5.25 in)')
  })
})

// Unicode 15, Latin-1 Supplement, Greek and Letterlike Symbols: U+00B5 is a micro sign and U+2126 an ohm sign, in place of Greek mu and omega.
describe('signs that look alike', () => {
  it('are all read, and told to people once', () => {
    for (const [one, other] of [
      ['\u00b5m', '\u03bcm'],
      ['\u00b5F', '\u03bcF'],
      ['m\u03a9', 'm\u2126'],
      ['M\u03a9', 'M\u2126'],
    ] as const) {
      const unit = findUnit(one)
      expect(unit).toBeDefined()
      expect(findUnit(other)).toBe(unit)
      const told = unit ? [unit.name, ...otherSpellings(unit)] : []
      expect(told.filter((name) => name === one || name === other)).toHaveLength(1)
    }
  })

  it('are the only spellings that are not told', () => {
    const untold = units.flatMap((unit) =>
      unit.aliases.filter((alias) => !otherSpellings(unit).includes(alias)),
    )
    expect(untold.length).toBeGreaterThan(0)
    for (const alias of untold) expect(alias).toMatch(/[\u00b5\u03bc\u2126]/)
  })
})
