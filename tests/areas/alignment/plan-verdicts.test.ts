// What is said to do about a reading that is outside, where no moves are given from it, and from when on a reading afloat counts. Common practice, no source.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { feet, flat, job } from './move-discrepancy-jobs.ts'

const of = (text: string, id: string) =>
  findingsOf(text, allChecks).findings.filter(({ check }) => check === id)

const nuts = feet('up 1 flat', 'up 2 flats')
/** Two readings with the move between them made as noted; the machine is outside both times. */
const made = job(nuts, [flat, 2 * flat])

describe('what to do about a reading that is outside', () => {
  const todos = (text: string) => of(text, 'alignment/gap-variation-outside').map(({ todo }) => todo)
  const inR2 = (line: string) => made.replace(/(reading r2 \{\n)/, `$1    ${line}\n`)

  it('is the plan, where it gives moves', () => {
    expect(todos(made).at(-1)).toMatch(/^Follow the plan: it gives the moves/)
  })

  it('is to go by a later reading, where there is one', () => {
    const still = made.replace(/ {2}move after r1 \{[^}]*\}\n/, '')
    expect(todos(still)[0]).toBe('Use r2 instead.')
  })

  it('is to read why no moves are given: a soft foot', () => {
    const soft = inR2('lifts: aft-port 0.20 mm, aft-stbd 0.02 mm, fwd-port 0.01 mm, fwd-stbd 0.02 mm')
    expect(todos(soft).at(-1)).toMatch(/^Follow the plan: it says why it gives no moves/)
  })

  it('is to move nothing after a move that had another effect', () => {
    const half = job(nuts, [flat / 2, flat])
    expect(todos(half).at(-1)).toMatch(
      /^Do not move anything yet\. The moves before this reading had an unexpected effect/,
    )
  })

  it('is the plan for a machine far off: it says how to bring it near', () => {
    const far = made
      .replace(/ {2}move after r1 \{[^}]*\}\n {2}reading r2 [\s\S]*$/, '}\n')
      .replace(/offsets: .*/, 'offsets: top 8 mm, starboard 0 mm, bottom -8 mm, port 0 mm')
    expect(todos(far)).toEqual([expect.stringMatching(/^Follow the plan: it gives the moves/)])
  })
})

describe('a reading afloat', () => {
  const read = (day: string) =>
    of(
      `job "a" { vessel: "x"  launched: 2026-03-18 }\n${made.replace(/ {2}move after r1 [\s\S]*$/, '}\n')}`.replace(
        'taken: 2026-03-04',
        `taken: ${day}\n    afloat: yes`,
      ),
      'alignment/read-too-soon-after-launch',
    )

  it('counts from a day after the launch', () => {
    expect(read('2026-03-18')).toHaveLength(1)
    expect(read('2026-03-19')).toEqual([])
    expect(read('2026-03-20')).toEqual([])
  })
})
