// Numbers with separators in odd places: no fix of one click may guess. The language's own rules.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applied, offersOf } from './offers.ts'

const motor = (power: string) => `motor m { power: ${power} }\n`
const battery = (window: string) => `battery house { window: ${window} }\n`

const errors = (text: string) =>
  offersOf(text, undefined).findings.filter(({ severity }) => severity === 'error')
const offered = (text: string) =>
  offersOf(text, undefined)
    .offers.filter(({ finding }) => finding.severity === 'error')
    .map(({ fix }) => ({ title: fix.title, isSure: fix.preferred === true || fix.safe === true }))

describe('limits with three points', () => {
  it('are one finding, and its fix keeps both limits and their order', () => {
    const text = battery('84...108 V')
    expect(errors(text)).toHaveLength(1)
    const [offer, ...more] = offersOf(text, 'job/value-not-allowed').offers
    expect(more).toEqual([])
    expect(offer && applied(offer.document, offer.fix)).toBe(battery('84..108 V'))
  })

  it.each(['108...84 V', '84...5 V'])('with the lower one last are not turned round: %s', (written) => {
    expect(errors(battery(written))).toHaveLength(1)
    expect(offered(battery(written))).toEqual([])
  })

  it('are not read where the third point may be that of the number', () => {
    const text = 'seal { compression: 0.1...5 in }\n'
    expect(errors(text).map(({ check }) => check)).toEqual(['job/value-not-allowed'])
    expect(offered(text)).toEqual([])
  })
})

describe('a number in odd groups', () => {
  it.each(['15,,000 W', '1,50,000 W', '1,5 000 W'])('%s is one finding, without a fix', (power) => {
    expect(errors(motor(power))).toHaveLength(1)
    expect(offered(motor(power))).toEqual([])
  })

  it.each([
    ['015,000 W', ['Write 15000 W (15 kW)', 'Write 15 W']],
    ['1_5 kW', ['Write 15 kW', 'Write 1.5 kW']],
    ['1_50_000.5 W', ['Write 150000.5 W (150 kW)']],
  ])('%s has no fix of one click', (power, titles) => {
    expect(errors(motor(power)).map(({ check }) => check)).toEqual(['job/comma-unclear'])
    expect(offered(motor(power))).toEqual(titles.map((title) => ({ title, isSure: false })))
  })
})

describe('a point before three digits in limits', () => {
  it('is not asked about where a thousand times as much is not allowed', () => {
    expect(
      offersOf(battery('1.084..1.108 kV'), 'job/point-unclear').findings.map(({ check }) => check),
    ).not.toContain('job/point-unclear')
  })
})

describe('any digits and separators', () => {
  const numbers = [
    'job/decimal-comma',
    'job/thousands-separator',
    'job/comma-unclear',
    'job/number-unreadable',
  ]
  const digits = fc.stringMatching(/^\d{1,4}$/)
  const separator = fc.constantFrom(',', '.', "'", '’', '_', ' ', ', ', ',,', ',', '.')
  const written = fc
    .tuple(digits, fc.array(fc.tuple(separator, digits), { maxLength: 3 }))
    .map(([first, more]) => first + more.flat().join(''))

  /** What a number can be in one way only; a space beside a comma is a slip. */
  const certain = [
    /^[1-9]\d{0,2}([ '’_])\d{3}(?:\1\d{3})*(?:[.,]\d+)?$/,
    /^[1-9]\d{0,2}([,.])\d{3}(?:\1\d{3})+$/,
    /^[1-9]\d{0,2}(?:,\d{3})+\.\d+$|^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/,
    /^\d+,(?:\d{1,2}|\d{4,})$|^(?:0|[1-9]\d{3,}),\d{3}$/,
  ]

  it('have a fix of one click only where they can be read in one way', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(written, (number) => {
        const { offers } = offersOf(motor(`${number} W`), undefined)
        for (const { finding, fix, document } of offers) {
          if (!numbers.includes(finding.check) || !(fix.preferred || fix.safe)) continue
          expect(number.replaceAll(', ', ',')).toSatisfy((text: string) =>
            certain.some((form) => form.test(text)),
          )
          expect(errors(applied(document, fix)).filter(({ check }) => numbers.includes(check))).toEqual([])
        }
      }),
      { numRuns: 2000 },
    )
  })
})
