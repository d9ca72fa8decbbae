// Two feet on one spot are a line that was copied (common practice, no source); how near is near enough to be meant is not.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const told = (...places: readonly string[]) =>
  findingsOf(
    `drive main {\n  bed {\n    adjuster: stud-and-nuts\n${places
      .map((place, i) => `    foot f${i} { ${place} }\n`)
      .join('')}  }\n}\n`,
    allChecks,
  )
    .findings.filter(({ check }) => check === 'alignment/feet-at-one-place')
    .map(({ message }) => message)

const aft = 'from-coupling: 180 mm  across: 140 mm port'

it.each([
  ['the same in other units', 'from-coupling: 0.18 m  across: 5.511811 in port', 1],
  ['the other side', 'from-coupling: 180 mm  across: 140 mm starboard', 0],
  ['further forward', 'from-coupling: 560 mm  across: 140 mm port', 0],
  ['a place that could not be read', 'from-coupling: 180  across: 140 mm port', 0],
])('a foot at %s', (_what, place, times) => {
  expect(told(aft, place)).toHaveLength(times)
})

it('each that was copied is told of once, with the foot it was copied from', () => {
  expect(told(aft, aft, aft)).toEqual([
    'Foot f1 is in the same place as foot f0.',
    'Foot f2 is in the same place as foot f0.',
  ])
})
