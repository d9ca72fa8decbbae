// The day of a measurement and the number of a drawing, in the brackets behind a value. The language's own rules.
import { expect, it } from 'vitest'
import { offersOf } from './offers.ts'

const found = (origin: string) =>
  offersOf(`seal { free-length: 148 mm [${origin}] }\n`, undefined, { today: '2026-03-10' })
    .findings.filter(({ severity }) => severity === 'error')
    .map(({ check, at }) => [check, at.section.text.slice(at.span.start, at.span.end)])

it.each([
  ['measured 2030-01-01', 'job/measured-in-future', '2030-01-01'],
  ['measured 2026-13-01', 'job/date-impossible', '2026-13-01'],
  ['measured 2026-02-30', 'job/date-impossible', '2026-02-30'],
  ['measured yesterday', 'job/value-not-allowed', 'yesterday'],
  ['drawing ""', 'job/value-not-allowed', '""'],
  ['drawing " "', 'job/value-not-allowed', '" "'],
])('[%s] is told', (origin, check, written) => {
  expect(found(origin)).toEqual([[check, written]])
})

it.each([
  'measured',
  'measured 2026-03-10',
  'measured 2026-03-04T14:30',
  'drawing "S-07"',
  'maker',
  'assumed',
])('[%s] is not', (origin) => {
  expect(found(origin)).toEqual([])
})
