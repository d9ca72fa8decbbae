// What a job that is as-built may not leave open at the coupling. Common practice, no source.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { findingsOf } from './marks.ts'

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
  '  move after a { aft-port: up 1 flat  aft-stbd: up 1 flat  fwd-port: up 1 flat  fwd-stbd: up 1 flat }\n'

describe.each([
  ['alignment/never-read', '', []],
  ['alignment/dated-in-future', reading('a', '9999-03-04'), ['warning']],
  ['alignment/no-reading-after-move', reading('a', '2020-03-04') + up, ['warning']],
  ['alignment/soft-foot', softOnce, ['warning']],
  ['alignment/soft-foot', softOnce + reading('b', '2020-03-05'), ['warning']],
] as const)('%s', (check, log, before) => {
  it('is an error in a job that is as-built', () => {
    expect(severities(job('as-built', log), check)).toEqual(['error'])
  })
  it('is none before', () => {
    for (const status of ['draft', 'issued']) expect(severities(job(status, log), check)).toEqual(before)
  })
})

it('a foot that was soft and bears since is no error', () => {
  const mended = softOnce + reading('b', '2020-03-05', 'lifts: aft-stbd 0.02 mm')
  expect(severities(job('as-built', mended), 'alignment/soft-foot')).toEqual(['warning'])
  expect(
    findingsOf(job('as-built', mended), allChecks).findings.filter(({ severity }) => severity === 'error'),
  ).toEqual([])
})

it('a drive without a bed, or one that was read, is asked for no reading', () => {
  const check = 'alignment/never-read'
  expect(severities(job('as-built', reading('a', '2020-03-04')), check)).toEqual([])
  expect(severities(job('as-built', '').replace(/ {2}bed \{[\s\S]*?\n {2}\}\n/, ''), check)).toEqual([])
})

it('a date that is today is none in the future', () => {
  const today = findingsOf(job('draft', reading('a', '9999-03-04')), allChecks)
    .findings.find(({ check }) => check === 'alignment/dated-in-future')
    ?.limit?.replace('at most ', '')
  expect(today).toMatch(/^\d{4}-\d\d-\d\d$/)
  expect(severities(job('as-built', reading('a', today ?? '')), 'alignment/dated-in-future')).toEqual([])
  const done = up.replace('{', '{ done: 9999-03-04 ')
  expect(severities(job('draft', reading('a', '2020-03-04') + done), 'alignment/dated-in-future')).toEqual([
    'warning',
  ])
})
