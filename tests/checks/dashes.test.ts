// Dashes in the place of a minus, and a minus without spaces: no sign is guessed. The language's own rules.
import { describe, expect, it } from 'vitest'
import { factValue, read } from '../job/meaning.ts'
import { applied, offersOf } from './offers.ts'

const errorsOf = (text: string) =>
  offersOf(text, undefined)
    .findings.filter(({ severity }) => severity === 'error')
    .map(({ check }) => check)
const fixedOnce = (text: string, check: string) =>
  offersOf(text, check).offers.map(({ document, fix }) => applied(document, fix))
const preferred = (text: string, check: string) =>
  offersOf(text, check).offers.filter(({ fix }) => fix.preferred || fix.safe)

const dashes = ['\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2015']

describe.each(dashes)('%s before a number', (dash) => {
  const inBlocks = (value: (sign: string) => string) => [value(dash), value('-')] as const
  it.each([
    inBlocks((sign) => `target x { afloat-up: ${sign}0.40 mm }\n`),
    inBlocks((sign) => `drive d { bed { foot aft { growth: ${sign}0.04 mm } } }\n`),
    inBlocks((sign) => `seal { compression: 26 mm +3/${sign}2 mm }\n`),
    inBlocks((sign) => `drive d { reading r { offsets: top ${sign}0.04 mm, port 0.02 mm } }\n`),
  ])('is told, and its fix writes a minus: %s', (text, meant) => {
    expect(errorsOf(text).filter((check) => check === 'job/dash-for-minus')).toHaveLength(1)
    expect(errorsOf(text)).not.toContain('job/unreadable')
    expect(fixedOnce(text, 'job/dash-for-minus')).toEqual([meant])
    expect(errorsOf(meant)).not.toContain('job/dash-for-minus')
  })

  it('gives no value', () => {
    const { blocks } = read(`drive d { target { afloat-up: ${dash}0.40 mm } }`)
    expect(factValue(blocks, 'd.target.afloat-up')).toBeUndefined()
  })

  it('between two limits is a range', () => {
    const text = `battery house { window: 84${dash}108 V }\n`
    expect(errorsOf(text)).toEqual(['job/value-not-allowed'])
    expect(fixedOnce(text, 'job/value-not-allowed')).toEqual(['battery house { window: 84..108 V }\n'])
  })
})

describe('a dash in a text', () => {
  it('is part of the text', () => {
    expect(errorsOf('job "x" { vessel: "Launch – 07" }\n')).toEqual([])
  })
})

describe('a minus without spaces', () => {
  it.each([
    ['gear { ratio: 2.5-1 }\n', ['gear { ratio: 2.5:1 }\n', 'gear { ratio: 2.5 - 1 }\n']],
    ['propeller { blades: 5-2 }\n', ['propeller { blades: 5 - 2 }\n']],
    ['seal { clamps-each-end: 3-1 }\n', ['seal { clamps-each-end: 3 - 1 }\n']],
    ['motor m { power-factor: 0.9-0.1 }\n', ['motor m { power-factor: 0.9 - 0.1 }\n']],
  ])('is not read as a difference: %s', (text, meant) => {
    expect(errorsOf(text)).toEqual(['job/minus-touches'])
    expect(fixedOnce(text, 'job/minus-touches')).toEqual(meant)
    expect(preferred(text, 'job/minus-touches')).toEqual([])
    for (const one of meant) expect(errorsOf(one)).toEqual([])
  })

  it('is part of a mixed number', () => {
    expect(errorsOf('seal { free-length: 1-1/4 in }\n')).toEqual([])
  })

  it('between two limits with units is a range', () => {
    expect(fixedOnce('battery house { window: 84 V–108 V }\n', 'job/value-not-allowed')).toEqual([
      'battery house { window: 84 V..108 V }\n',
    ])
  })
})

describe('a ratio as a fraction', () => {
  it.each(['1/2', '1 / 2'])('%s is asked about', (ratio) => {
    const text = `gear { ratio: ${ratio} }\n`
    expect(errorsOf(text)).toEqual(['job/ratio-unclear'])
    expect(fixedOnce(text, 'job/ratio-unclear')).toEqual(['gear { ratio: 1:2 }\n', 'gear { ratio: 0.5 }\n'])
    expect(preferred(text, 'job/ratio-unclear')).toEqual([])
  })

  it('above one is the same either way', () => {
    expect(errorsOf('gear { ratio: 5/2 }\n')).toEqual([])
  })
})
