// What a job that is as-built may not leave open at the coupling. Common practice, no source.
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const reading = (name: string, day: string, lifts = '') => `  reading ${name} {
    taken: ${day}
    gauge: 0.02 mm
    afloat: yes
    gaps: top 4.00 mm, starboard 4.00 mm, bottom 4.00 mm, port 4.00 mm
    offsets: top 0.01 mm, starboard -0.03 mm, bottom -0.01 mm, port 0.03 mm
    ${lifts}
  }
`
const job = (status: string, log: string) => `job "Launch" {
  vessel: "Launch 07"
  revision: "A"
  status: ${status}
}
drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${log}}
`
const severities = (text: string, check: string) =>
  findingsOf(text, allChecks)
    .findings.filter((finding) => finding.check === check)
    .map(({ severity }) => severity)

const softOnce = reading(
  'a',
  '2020-03-04',
  'lifts: aft-port 0.02 mm, aft-stbd 0.15 mm, fwd-port 0.02 mm, fwd-stbd 0.02 mm',
)
const up =
  '  move after a { done: 2026-03-04  aft-port: up 1 flat  aft-stbd: up 1 flat  fwd-port: up 1 flat  fwd-stbd: up 1 flat }\n'

const open = (text: string) =>
  findingsOf(text, allChecks).findings.some(({ check }) => check === 'job/as-built-with-errors')

describe.each([
  ['alignment/dated-in-future', reading('a', '9999-03-04')],
  ['alignment/soft-foot', softOnce],
  ['alignment/soft-foot', softOnce + reading('b', '2020-03-05')],
] as const)('%s', (check, log) => {
  it('may not be open in a job that is as-built', () => {
    expect(open(job('as-built', log))).toBe(true)
  })
  it('weighs the same whatever the status', () => {
    for (const status of ['draft', 'issued', 'as-built'])
      expect(severities(job(status, log), check)).toEqual([
        check === 'alignment/dated-in-future' ? 'error' : 'warning',
      ])
  })
})

it('a foot that was soft and bears since leaves nothing open', () => {
  const mended = softOnce + reading('b', '2020-03-05', 'lifts: aft-stbd 0.02 mm')
  expect(severities(job('as-built', mended), 'alignment/soft-foot')).toEqual(['information'])
  expect(open(job('as-built', mended))).toBe(false)
})

describe('an as-built drive is shown to be aligned', () => {
  const why = (log: string, status = 'as-built') =>
    findingsOf(job(status, log), allChecks)
      .findings.filter(({ check }) => check === 'alignment/no-reading-within')
      .map(({ severity, message }) => `${severity}: ${message}`)
  const says = (words: string) => [`error: The drive is not shown to be aligned: ${words}.`]
  const good = reading('a', '2020-03-04')

  it.each([
    ['it has no reading of the coupling', ''],
    ['the machine was moved after a', good + up],
    ['a was taken dry', good.replace('afloat: yes', 'afloat: no')],
    ['a does not say that it was afloat', good.replace('    afloat: yes\n', '')],
    ['a does not say that it was afloat', good.replace('afloat: yes', 'afloat: ?')],
    ['a cannot show that it is within', good.replace(/ {4}offsets.*\n/, '')],
    ['the alignment cannot be worked out from a', good.replace(/ {4}gaps.*\n/, '')],
    ['the values of a contradict each other', good.replace('port 4.00 mm', 'port 4.60 mm')],
  ])('not where %s', (words, log) => {
    expect(why(log)).toEqual(says(words))
    for (const status of ['draft', 'for-review', 'issued']) expect(why(log, status)).toEqual([])
  })

  it('by a reading afloat that is within, the last one', () => {
    expect(why(good)).toEqual([])
    expect(why(good.replace('afloat: yes', 'afloat: no') + reading('b', '2020-03-06'))).toEqual([])
  })

  it('and an empty drive is not', () => {
    const text =
      'job "x" { vessel: "v"  revision: "A"  status: as-built  launched: 2020-01-01 }\ndrive main { }\n'
    const found = findingsOf(text, allChecks).findings.filter(({ severity }) => severity === 'error')
    expect(found.map(({ check }) => check)).toContain('alignment/no-reading-within')
  })
})

it('a date that is today is none in the future', () => {
  const today = findingsOf(job('draft', reading('a', '9999-03-04')), allChecks)
    .findings.find(({ check }) => check === 'alignment/dated-in-future')
    ?.limit?.replace('at most ', '')
  expect(today).toMatch(/^\d{4}-\d\d-\d\d$/)
  expect(severities(job('as-built', reading('a', today ?? '')), 'alignment/dated-in-future')).toEqual([])
  const done = up.replace('{', '{ done: 9999-03-04 ')
  expect(severities(job('draft', reading('a', '2020-03-04') + done), 'alignment/dated-in-future')).toEqual([
    'error',
  ])
})

describe('a machine that moved without a note', () => {
  const text = readFileSync(resolve('docs/examples/survey-launch-as-built.wright'), 'utf8')
  const last = text.slice(text.indexOf('  reading afloat-1'), text.indexOf('  controller {'))
  const low = last
    .replace('afloat-1', 'afloat-0')
    .replace('2026-03-19', '2026-03-18')
    .replace(
      'top -0.04 mm, starboard 0.04 mm, bottom 0.04 mm',
      'top -0.44 mm, starboard 0.04 mm, bottom 0.44 mm',
    )

  it('is not handed over until it is explained', () => {
    const found = findingsOf(text.replace(last, low + last), allChecks).findings
    expect(found.map(({ check }) => check)).toContain('alignment/move-had-another-effect')
    expect(found.find(({ check }) => check === 'job/as-built-with-errors')?.severity).toBe('error')
  })
})
