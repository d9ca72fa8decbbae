// Decimal commas and thousands separators: none may move a value by a factor of a thousand. The language's own rules.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { fixAll } from '../../server/src/editor/code-actions/code-actions.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { factValue, read } from '../job/meaning.ts'
import { findingsOf } from './marks.ts'
import { applied, offersOf } from './offers.ts'

const motor = (fact: string) => `drive d {\n  motor main { ${fact} }\n}\n`
const shims = (list: string) => `drive d {\n  bed { shims: ${list} }\n}\n`

const ids = ['job/decimal-comma', 'job/thousands-separator', 'job/comma-unclear']
const found = (text: string) =>
  findingsOf(text, allChecks).findings.filter(({ check }) => ids.includes(check))
const offered = (text: string) =>
  ids.flatMap((id) =>
    offersOf(text, id).offers.map(({ finding, fix }) => ({
      check: finding.check,
      title: fix.title,
      preferred: fix.preferred ?? false,
      safe: fix.safe ?? false,
    })),
  )

/** The text after "fix all". */
function afterFixAll(text: string): string {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  const { findings, document } = findingsOf(text, allChecks)
  const given = { analysis, file: { ...file, document }, today: '2026-03-10', findings, blanks: false }
  return document.sections
    .map((section) => {
      const edit = fixAll(given).find(({ at }) => at.section === section)
      if (!edit) return section.text
      const { start, end } = edit.at.span
      return section.text.slice(0, start) + edit.newText + section.text.slice(end)
    })
    .join('')
}

describe('a comma before three digits', () => {
  it.each([
    ['power: 15,000 W', ['Write 15000 W (15 kW)', 'Write 15 W']],
    ['speed: 1,500 rpm', ['Write 1500 rpm', 'Write 1.5 rpm']],
    // A power factor is 1 at most.
    ['power-factor: 1,000', ['Write 1', 'Write 1000']],
    ['speed: 1,475 rpm', ['Write 1475 rpm', 'Write 1.4750 rpm (1.475 rpm)']],
    ['mass: 62,500 kg', ['Write 62.5 kg', 'Write 62500 kg']],
  ])('%s offers both, neither as the one that is meant', (fact, titles) => {
    const offers = offered(motor(fact))
    expect(offers.map(({ title }) => title)).toEqual(titles)
    expect(offers.every(({ check }) => check === 'job/comma-unclear')).toBe(true)
    expect(offers.some(({ preferred, safe }) => preferred || safe)).toBe(false)
    expect(afterFixAll(motor(fact))).toBe(motor(fact))
  })

  it('gives no value', () => {
    expect(factValue(read(motor('power: 15,000 W')).blocks, 'd.motor.power')).toBeUndefined()
  })
})

describe('a number that can be read one way only', () => {
  it.each([
    ['35,2', '35.2', 'job/decimal-comma'],
    ['0,125', '0.125', 'job/decimal-comma'],
    ['12,0000', '12.0000', 'job/decimal-comma'],
    ['1500,125', '1500.125', 'job/decimal-comma'],
    [',5', '0.5', 'job/decimal-comma'],
    ['1,234,567', '1234567', 'job/thousands-separator'],
    ['1.234,56', '1234.56', 'job/thousands-separator'],
    ['1,234.56', '1234.56', 'job/thousands-separator'],
    ['15,000.5', '15000.5', 'job/thousands-separator'],
    ['1.234.567', '1234567', 'job/thousands-separator'],
    ["15'000", '15000', 'job/thousands-separator'],
    ['15’000,5', '15000.5', 'job/thousands-separator'],
    ['15\u2009000', '15000', 'job/thousands-separator'],
    ['15\u00a0000,25', '15000.25', 'job/thousands-separator'],
    ['15_000', '15000', 'job/thousands-separator'],
    ['1_500_000.5', '1500000.5', 'job/thousands-separator'],
    ['1,5e3', '1.5e3', 'job/decimal-comma'],
    ["15'000e3", '15000e3', 'job/thousands-separator'],
    ['1.234,5e-3', '1234.5e-3', 'job/thousands-separator'],
  ])('%s is %s', (written, meant, check) => {
    const text = motor(`power: ${written} W`)
    expect(offered(text)).toEqual([{ check, title: `Write ${meant} W`, preferred: true, safe: true }])
    expect(afterFixAll(text)).toBe(motor(`power: ${meant} W`))
    expect(found(afterFixAll(text))).toEqual([])
    expect(formatText(text)).toBe(text)
  })

  it('with a plain space is fixed only when asked: a comma may be missing there', () => {
    expect(offered(motor('power: 15 000 W'))).toEqual([
      { check: 'job/thousands-separator', title: 'Write 15000 W', preferred: true, safe: false },
    ])
  })
})

describe('a comma with a space beside it', () => {
  it.each([
    ['power: 15, 000 W', ['Write 15000 W (15 kW)', 'Write 15 W']],
    ['power: 15 ,000 W', ['Write 15000 W (15 kW)', 'Write 15 W']],
    ['speed: 1, 500 rpm', ['Write 1500 rpm', 'Write 1.5 rpm']],
    ['mass: 62, 5 kg', ['Write 62.5 kg']],
    ['power: 1, 234, 567 W', ['Write 1234567 W']],
    ['power: 15 000, 5 W', ['Write 15000.5 W']],
  ])('%s is one number, and one finding', (fact, titles) => {
    expect(found(motor(fact))).toHaveLength(1)
    expect(
      findingsOf(motor(fact), allChecks).findings.filter(({ severity }) => severity === 'error'),
    ).toHaveLength(1)
    const offers = offered(motor(fact))
    expect(offers.map(({ title }) => title)).toEqual(titles)
    expect(offers.some(({ preferred, safe }) => safe || (preferred && titles.length > 1))).toBe(false)
    expect(afterFixAll(motor(fact))).toBe(motor(fact))
    expect(factValue(read(motor(fact)).blocks, 'd.motor.power')).toBeUndefined()
  })

  it('parts two values where the fact may have two', () => {
    expect(found(shims('1, 2 mm'))).toEqual([])
    expect(found('coupling x { bolts: 4 x M10 class 10, 45 N·m }\n')).toEqual([])
    expect(found('drive d { reading r { gaps: top 1 mm, 30 deg 2 mm } }\n')).toEqual([])
  })

  it('but no value is 000, and no place 92 mm', () => {
    expect(found(shims('15, 000 mm')).map(({ check }) => check)).toEqual(['job/comma-unclear'])
    const gaps = (top: string) => `drive d { reading r { gaps: ${top}, starboard 1 mm, port 1 mm } }\n`
    expect(offered(gaps('top 1, 92 mm')).map(({ title }) => title)).toEqual(['Write 1.92 mm'])
  })
})

describe('a point before three digits', () => {
  const asked = (text: string) =>
    findingsOf(text, allChecks).findings.filter(({ check }) => check === 'job/point-unclear')
  const shaft = (fact: string) => `shaft x { ${fact} }\n`
  const foot = (fact: string) => `drive d { bed { foot aft { ${fact} } } }\n`

  it.each([
    [
      motor('power: 15.000 W'),
      '15.000 W is read as 15 W, not as 15 kW.',
      ['Write 15000 W (15 kW)', 'Write 15 W'],
    ],
    [
      motor('power: 250.000 W'),
      '250.000 W is read as 250 W, not as 250 kW.',
      ['Write 250000 W (250 kW)', 'Write 250 W'],
    ],
    [
      motor('speed: 1.500 rpm'),
      '1.500 rpm is read as 1.5 rpm, not as 1500 rpm.',
      ['Write 1500 rpm', 'Write 1.5 rpm'],
    ],
    [
      motor('speed: 1.475 rpm'),
      '1.475 rpm is read as 1.475 rpm, not as 1475 rpm.',
      ['Write 1475 rpm', 'Write 1.4750 rpm (1.475 rpm)'],
    ],
    [
      motor('mass: 1.200 kg'),
      '1.200 kg is read as 1.2 kg, not as 1200 kg.',
      ['Write 1200 kg', 'Write 1.2 kg'],
    ],
    [
      foot('from-coupling: 1.250 mm  across: 0 mm'),
      '1.250 mm is read as 1.25 mm, not as 1.25 m.',
      ['Write 1250 mm (1.25 m)', 'Write 1.25 mm'],
    ],
  ])('is asked about: %s', (text, message, titles) => {
    const findings = asked(text)
    expect(findings.map((finding) => [finding.severity, finding.message])).toEqual([['warning', message]])
    const { offers } = offersOf(text, 'job/point-unclear')
    expect(offers.map(({ fix }) => fix.title)).toEqual(titles)
    expect(offers.some(({ fix }) => fix.preferred || fix.safe)).toBe(false)
    expect(afterFixAll(text)).toBe(text)
    for (const { document, fix } of offers) expect(asked(applied(document, fix))).toEqual([])
  })

  it.each([
    shims('0.125 mm, 3.175 mm, 12.345 mm'),
    shaft('diameter: 1.375 in  length: 2.650 m'),
    shaft('diameter: 35.000 mm'),
    shaft('diameter: 12.345 mm'),
    foot('from-coupling: 180.000 mm  across: 3.175 mm port'),
    'drive d { reading r { gauge: 0.125 mm  gaps: top 1.375 mm, starboard 2.000 mm, port 1.000 mm } }\n',
    'cable x { conductor: 1.500 mm2  length: 1.800 m  design-current: 160.000 A }\n',
    motor('power: 15.000 kW  voltage: 58.000 V  power-factor: 0.900  mass: 62.500 kg'),
    motor('power: 15.00 W  speed: 1.5 rpm'),
    'gear x { ratio: 2.500 }\n',
  ])('is a decimal point: %s', (text) => {
    expect(asked(text)).toEqual([])
  })
})

describe('all decimal commas of a line', () => {
  it.each([
    [
      'reading r { gaps: top 1,92 mm, starboard 1,80 mm, bottom 1,66 mm, port -0,02 mm }',
      'reading r { gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port -0.02 mm }',
      4,
    ],
    ['seal { compression: 26,5 mm +3,5/-2,25 mm }', 'seal { compression: 26.5 mm +3.5/-2.25 mm }', 2],
    ['seal { compression: 26,5 mm ± 0,5 mm }', 'seal { compression: 26.5 mm ± 0.5 mm }', 2],
    ['controller { input: 72,5..120,5 V }', 'controller { input: 72.5..120.5 V }', 2],
    ['shaft { length: 2 * (1,5 m + ,25 m) }', 'shaft { length: 2 * (1.5 m + 0.25 m) }', 2],
    ['bed { shims: 0,1 mm, 0,2 mm, 1,5 mm }', 'bed { shims: 0.1 mm, 0.2 mm, 1.5 mm }', 3],
  ])('%s', (line, right, count) => {
    const text = `drive d {\n  ${line}\n}\n`
    expect(found(text).map(({ check }) => check)).toEqual(Array(count).fill('job/decimal-comma'))
    expect(afterFixAll(text)).toBe(`drive d {\n  ${right}\n}\n`)
    expect(found(afterFixAll(text))).toEqual([])
  })
})

describe('a list without spaces', () => {
  it.each(['0.1,0.2 mm', '1,2,5 mm', '0.5,1,2.5 mm', '0.1 mm,0.2 mm'])('%s is a list', (list) => {
    expect(found(shims(list))).toEqual([])
  })

  it('of two whole numbers may also be one with a decimal comma', () => {
    expect(offered(shims('1,2 mm')).map(({ title }) => title)).toEqual(['Write 1.2 mm', 'Write 1 mm, 2 mm'])
    expect(afterFixAll(shims('1,2 mm'))).toBe(shims('1,2 mm'))
  })
})

describe('a list with a number that has no unit', () => {
  const values = (list: string) => factValue(read(shims(list)).blocks, 'd.bed.shims')
  const errors = (list: string) =>
    findingsOf(shims(list), allChecks).findings.filter(({ severity }) => severity === 'error')

  it.each([
    ['0.05, 0.1, 0.2 mm', ['0.05', '0.1']],
    ['0.05 mm, 0.1', ['0.1']],
    ['0.05 mm, 0.1, 0.008 in', ['0.1']],
  ])('never takes that of its neighbour: %s', (list, bare) => {
    expect(errors(list).map(({ check, found }) => [check, found])).toEqual(
      bare.map((number) => ['job/unit-missing', number]),
    )
    expect(values(list)).toBeUndefined()
  })

  it('is read where each has its own', () => {
    expect(errors('0.05 mm, 0.004 in')).toEqual([])
    expect(values('0.05 mm, 0.1 mm, 0.2 mm')).toHaveLength(3)
  })
})
