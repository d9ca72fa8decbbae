import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const job = (origin: string) => `battery house { nominal: 96 V  window: 84..108 V ${origin} }
coupling stock { flange-diameter: 125 mm  gauge-diameter: 110 mm ${origin} }
drive main {
  coupling { like: stock }
  bed {
    adjuster: shims
    foot aft-port { from-coupling: 180 mm ${origin}  across: 140 mm port }
  }
  reading dry-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: top 1.9 mm, starboard 1.8 mm, bottom 1.6 mm, port 1.7 mm }
  motor propulsion { power: 15 kW  efficiency: 92 % ${origin} }
  controller { input: 72..120 V  efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 10 mm2  length: 2 m ${origin}  insulation: 90 degC }
}
`
const assumed = (text: string, check: string) =>
  findingsOf(text, allChecks)
    .findings.filter((finding) => finding.check === check)
    .flatMap(({ assumptions = [] }) => assumptions)
    .filter((words) => words.startsWith('the job marks as assumed'))

const [ofReading, ofCable] = ['alignment/gap-variation-outside', 'cable/undersized']

it('a result says what of the job it depends on is marked as assumed, taken over from another block too', () => {
  expect(assumed(job('[assumed]'), ofReading)).toEqual([
    'the job marks as assumed: gauge-diameter 110 mm of the coupling; from-coupling 180 mm of aft-port',
  ])
  const cable = assumed(job('[assumed]'), ofCable)
  expect(cable).toContain(
    'the job marks as assumed: window 84..108 V of house; efficiency 92 % of propulsion',
  )
  expect(cable).toContain('the job marks as assumed: length 2 m of feed')
})

it.each([
  ['[assumd]', 'Did you mean assumed?'],
  ['[makr 2026-03-04]', 'Did you mean maker?'],
  ['[supplier]', 'Write one of maker, measured, drawing, assumed.'],
  ['["S-07"]', 'Write one of maker,'],
  ['[]', 'Write one of maker,'],
])('an origin that is none is a finding: %s', (origin, todo) => {
  const { findings } = findingsOf(`seal { free-length: 148 mm ${origin} }`, allChecks)
  expect(findings.map(({ check }) => check)).toEqual(['job/value-not-allowed'])
  expect(findings[0]?.todo).toContain(todo)
})

it('what has another origin is no assumption', () => {
  expect(assumed(job('[maker]'), ofReading)).toEqual([])
  expect(assumed(job('[maker]'), ofCable)).toEqual([])
})
