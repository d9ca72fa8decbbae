// Units that are missing, written twice or of another kind: one finding, and a fix that says what was meant. The language's own rules.
import { expect, it } from 'vitest'
import { applied, offersOf } from './offers.ts'

const errors = (text: string) =>
  offersOf(text, undefined).findings.filter(({ severity }) => severity === 'error')
const offered = (text: string) =>
  offersOf(text, undefined)
    .offers.filter(({ finding }) => finding.severity === 'error')
    .map(({ document, fix }) => ({ text: applied(document, fix), preferred: fix.preferred ?? false }))

const foot = (across: string) => `drive d { bed { foot aft { across: ${across} } } }\n`
const shaft = (fact: string) => `shaft x { ${fact} }\n`
const seal = (compression: string) => `seal { compression: ${compression} }\n`
const battery = (window: string) => `battery house { window: ${window} }\n`

it('a unit that is missing before a side or a tolerance class is said to be missing', () => {
  expect(errors(foot('140 port')).map(({ check, found }) => [check, found])).toEqual([
    ['job/unit-missing', '140'],
  ])
  expect(offered(foot('140 port')).map(({ text }) => text)).toContain(foot('140 mm port'))
  expect(errors(shaft('diameter: 35 h9')).map(({ check, found }) => [check, found])).toEqual([
    ['job/unit-missing', '35'],
  ])
  expect(offered(shaft('diameter: 35 h9'))).toEqual([{ text: shaft('diameter: 35 mm h9'), preferred: true }])
})

it('a unit of another kind is not said to be meant', () => {
  expect(errors(shaft('length: 2 yd')).map(({ todo }) => todo)).toEqual([
    'Write one of the units in the reference.',
  ])
  expect(errors(shaft('length: 2 mn')).map(({ todo }) => todo)).toEqual(['Did you mean mm?'])
})

it('limits that have their unit twice are written with it once', () => {
  expect(errors(seal('26 mm +3 mm/-2 mm'))).toHaveLength(1)
  expect(offered(seal('26 mm +3 mm/-2 mm'))).toEqual([{ text: seal('26 mm +3/-2 mm'), preferred: true }])
  expect(errors(seal('26 mm +3/-2 mm'))).toEqual([])
})

it('a comma between two limits is first taken for two points', () => {
  for (const written of ['84, 108 V', '84, 96 V']) {
    expect(errors(battery(written))).toHaveLength(1)
    const [first, ...more] = offered(battery(written))
    expect(first).toEqual({ text: battery(written.replace(', ', '..')), preferred: false })
    expect(more.every(({ preferred }) => !preferred)).toBe(true)
  }
})
