// Texts whose quotes are missing or of another kind, and signs for feet and inches: one finding each, and one fix that leaves none.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from './marks.ts'
import { applied, offersOf } from './offers.ts'

const job = (facts: string, title = '"x"') => `job ${title} {\n  ${facts}\n}\n`
const bed = (thread: string) => `bed stock {\n  thread: ${thread}\n}\n`
const seal = (length: string) => `seal stock {\n  free-length: ${length}\n}\n`
/** What is found besides what the job does not say yet. */
const checksOf = (text: string) =>
  findingsOf(text, allChecks)
    .findings.map(({ check }) => check)
    .filter((check) => !check.endsWith('-missing'))

it.each([
  ['a thread', bed('3/4-10 UNC [maker]'), bed('"3/4-10 UNC" [maker]')],
  ['a thread with its pitch', bed('M16 x 1.5'), bed('"M16 x 1.5"')],
  ['a vessel', job('vessel: Launch 07'), job('vessel: "Launch 07"')],
  ['a vessel of one word', job('vessel: Launch'), job('vessel: "Launch"')],
  ['a vessel with a comma', job('vessel: Launch, grey'), job('vessel: "Launch, grey"')],
  ['a revision', job('vessel: "x"  revision: C 2'), job('vessel: "x"  revision: "C 2"')],
  ['single quotes', job("vessel: 'Launch 07'"), job('vessel: "Launch 07"')],
  ['single quotes in a title', job('vessel: "x"', "'Boat 7'"), job('vessel: "x"', '"Boat 7"')],
  ['double curly quotes', job('vessel: “Launch 07”'), job('vessel: "Launch 07"')],
  ['single curly quotes', job('vessel: ‘Launch 07’'), job('vessel: "Launch 07"')],
  ['low quotes', job('vessel: „Launch 07“'), job('vessel: "Launch 07"')],
  ['angle quotes', job('vessel: «Launch 07»'), job('vessel: "Launch 07"')],
  ['an inch sign', seal('5″'), seal('5 in')],
  ['a straight inch sign', seal('72"'), seal('72 in')],
  ['a straight inch sign behind decimals', seal('1.008"'), seal('1.008 in')],
  ['a straight foot sign', seal("6'"), seal('6 ft')],
  ['feet and inches', seal(`6' 3"`), seal('6 ft + 3 in')],
  ['an opening quote that is missing', job('vessel: Launch 07"'), job('vessel: "Launch 07"')],
  ['a foot sign', seal('1′'), seal('1 ft')],
])('%s', (_title, text, right) => {
  expect(checksOf(text)).toHaveLength(1)
  const offers = offersOf(text, undefined).offers.filter(({ finding }) => !finding.check.endsWith('-missing'))
  expect(offers.map(({ fix }) => fix.preferred)).toEqual([true])
  expect(offers.map(({ fix, document }) => applied(document, fix))).toEqual([right])
  expect(checksOf(right)).toEqual([])
})

it('several on one line are one finding each', () => {
  expect(checksOf(job("vessel: 'A'  revision: “B”", '‘C’'))).toEqual(Array(3).fill('job/curly-quotes'))
})

describe('what quotes cannot make a text', () => {
  it('is offered none', () => {
    expect(offersOf(job('vessel: Launch "07"'), 'job/value-not-allowed').offers).toEqual([])
  })
})
