// A move that does not say when it was done is planned: it moves no machine. Common practice, no source.
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { PlanJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { fixed } from '../../checks/offers.ts'
import { randomFrom } from '../../fuzz/random.ts'
import { randomDrive } from '../random-drive.ts'
import { saidOf } from '../said-of.ts'
import { feet, job } from './move-discrepancy-jobs.ts'

const both = job(feet('up 1 flat', 'up 4 flats'), [1 / 3, 4 / 3])
/** The first reading alone, far outside its limits. */
const first = both.replace(/ {2}move after[\s\S]*$/, '}\n')
const planned = (text: string, lines: readonly string[] = feet('up 1 flat', 'up 1 flat')) =>
  text.replace(/\}\n$/, `  move after r1 {\n${lines.map((line) => `    ${line}\n`).join('')}  }\n}\n`)

const planOf = (text: string): PlanJson | undefined => saidOf(text).json[0]?.at(-1) as PlanJson | undefined
const words = (text: string): string => saidOf(text).words.at(-1) ?? ''
const codes = (text: string): readonly string[] =>
  findingsOf(text, allChecks).findings.map(({ severity, check }) => `${severity} ${check}`)
const steps = (text: string) => {
  const { planned: _, ...plan } = planOf(text) ?? { planned: [] }
  return plan
}

describe('a planned move after the last reading', () => {
  it('leaves the steps as they are, is said in the plan, and asks for when and by whom', () => {
    const text = planned(first)
    expect(planOf(first)?.feet.some(({ turns }) => turns && turns.flats + turns.turns > 0)).toBe(true)
    expect(steps(text)).toEqual(steps(first))
    expect(words(text)).toContain('A move after r1 is planned: it does not say that it was made.')
    expect(words(text)).toContain('If it was made, write `done`, and read again before you move anything.')
    const [ask] = findingsOf(text, allChecks).findings.filter(
      ({ check }) => check === 'alignment/move-planned',
    )
    expect(ask).toMatchObject({ severity: 'information', plan: 'goes-on' })
    expect(ask?.todo).toContain('`done` with the day and `by`')
    expect(codes(text)).not.toContain('warning alignment/no-reading-after-move')
  })

  it('is said to be what the plan asks where it is, and else where it differs', () => {
    const written = fixed(first, 'alignment/gap-variation-outside', 'Write this move into the job')
    expect(written).not.toContain('done:')
    expect(planOf(written)?.planned).toMatchObject([{ differsAt: [] }])
    expect(words(written)).toContain('It is what the plan asks.')
    const unsafe = written.replace('110 mm', '150 mm')
    expect(planOf(unsafe)?.planned).toMatchObject([{ differsAt: null }])
    expect(words(unsafe)).toContain('This reading gives no steps, so do not make it.')
    const turned = written.replace(/(fwd-port: )up/, '$1down')
    expect(planOf(turned)?.planned).toMatchObject([{ differsAt: ['fwd-port'] }])
    expect(words(turned)).toContain('It is not what the plan asks at fwd-port: correct it or delete it.')
  })

  it('changes no step and no verdict, in 40 jobs', () => {
    const random = randomFrom(7)
    let withSteps = 0
    for (let i = 0; i < 40; i++) {
      const text = randomDrive(random)
      const last = [...text.matchAll(/reading (r\d)/g)].at(-1)?.[1]
      const foot = /foot ([\w-]+)/.exec(text)?.[1]
      const more = text.replace(/\}\n$/, `  move after ${last} { ${foot}: up 0.3 mm }\n}\n`)
      const plan = steps(text)
      expect(steps(more)).toEqual(plan)
      const others = codes(more).filter((code) => !code.endsWith('alignment/move-planned'))
      expect(others).toEqual(codes(text))
      if ('predicted' in plan && plan.predicted) withSteps++
    }
    expect(withSteps).toBeGreaterThan(5)
  }, 120_000)

  it('is no longer planned once it has a day, even one that cannot be read', () => {
    for (const done of ['2026-03-04', 'yesterday', '', '?', '2026-13-40']) {
      const text = planned(first, [`done: ${done}`, ...feet('up 1 flat', 'up 4 flats')])
      expect(planOf(text)?.withheld).toBe('moved-since')
      expect(planOf(text)?.planned).toEqual([])
    }
  })

  it('keeps its name until then: a misspelt done gives no steps', () => {
    const text = planned(first, ['dnoe: 2026-03-04', ...feet('up 1 flat', 'up 4 flats')])
    expect(planOf(text)?.feet.every(({ turns }) => !turns || turns.direction === 'none')).toBe(true)
  })

  it('that was made as well is to be deleted, not the one that was made', () => {
    const made = ['done: 2026-03-04', ...feet('up 1 flat', 'up 4 flats')]
    const plan = feet('up 1 flat', 'up 4 flats')
    for (const text of [planned(planned(first, plan), made), planned(planned(first, made), plan)]) {
      const after = fixed(text, 'alignment/move-noted-twice', 'Delete this repeated move')
      expect(after.match(/move after/g)).toHaveLength(1)
      expect(after).toContain('done: 2026-03-04')
    }
  })
})

describe('a move without a day that a reading follows', () => {
  const undated = both.replace(/ *done: 2026-03-04/, '')
  const mirrored = job(feet('up 1 flat', 'up 4 flats'), [-1 / 3, -4 / 3]).replace(/ *done: 2026-03-04/, '')

  it('is asked for its day, and no steps are given until then', () => {
    expect(codes(undated)).toContain('warning alignment/move-not-dated')
    expect(planOf(undated)).toMatchObject({
      withheld: 'finding',
      findings: [{ check: 'alignment/move-not-dated' }],
    })
    expect(saidOf(undated).stepped).toBe(false)
  })

  it('is taken neither as made nor as not made: the readings are not held against each other', () => {
    for (const text of [undated, mirrored]) {
      expect(saidOf(text).json[1]).toMatchObject([
        { movedAfter: [], plannedAfter: [{}, {}, {}, {}] },
        { against: null },
      ])
      expect(codes(text).join()).not.toContain('move-had-another-effect')
    }
  })

  it('gives what the log shows once its day is written', () => {
    const dated = mirrored.replace('move after r1 {', 'move after r1 { done: 2026-03-04')
    expect(codes(dated)).toContain('warning alignment/move-had-another-effect')
    expect(codes(dated)).not.toContain('warning alignment/move-not-dated')
  })

  it('changes no verdict', () => {
    const verdicts = (text: string) => codes(text).filter((code) => /outside|undecided/.test(code))
    const without = both.replace(/ {2}move after[\s\S]*?\n {2}\}\n/, '')
    expect(verdicts(undated)).toEqual(verdicts(without))
  })
})

describe('a planned move whose feet cannot be read', () => {
  it.each(['up 1,5 flats', 'up ? flats', '?', 'sideways'])('moves nothing: aft-port: %s', (foot) => {
    const text = readFileSync(resolve('docs/examples/survey-launch-as-built.wright'), 'utf8').replace(
      '  controller {',
      `  move after afloat-1 { aft-port: ${foot} }\n\n  controller {`,
    )
    const ids = findingsOf(text, allChecks).findings.map(({ check }) => check)
    expect(ids).toContain('alignment/move-planned')
    expect(ids).not.toContain('alignment/no-reading-after-move')
  })
})
