// Mistakes on machines whose true pose and whose true moves are known only to the simulation. Of each mistake whose effect is beyond three times its expanded
// uncertainty at least nine of ten are to be named, alone or among at most three; of logs without a mistake at most one in a thousand has one named (the
// project's own bounds). Of 200 drawn, fewer than 180 would be named in one case of a thousand where 95 of 100 are (binomial distribution).
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { cleanLogs, mistakeNames, namedOf } from './simulated-mistakes.ts'

describe('a mistake', () => {
  it.each(mistakeNames)('is named: %s', (name) => {
    const { beyond, near } = namedOf(name, 200)
    expect(beyond.drawn).toBe(200)
    expect(beyond.few).toBeGreaterThanOrEqual(180)
    expect(beyond.stepsWrongly + near.stepsWrongly).toBe(0)
  })
})

// One in a thousand of 4000 is four; the noise of the chi-square test alone is told in one of a hundred, and half a step of gauge noise adds as much.
it('no mistake is named in a log without one', () => {
  const { alarms, named } = cleanLogs(4000)
  expect(named).toBeLessThanOrEqual(4)
  expect(alarms).toBeLessThan(0.03 * 4000)
})

it('the document shows what the simulator prints', () => {
  const name = 'nothing moved'
  const text = readFileSync(new URL('../../docs/engineering/alignment.md', import.meta.url), 'utf8')
  const row = text.split('\n').find((line) => line.startsWith(`| ${name} |`)) ?? ''
  const { beyond } = namedOf(name, 1000)
  const percent = (part: number) => `${(part / 10).toFixed(2)} %`
  expect(row.split(' | ').slice(1, 6)).toEqual(
    [beyond.alone, beyond.few, beyond.many, beyond.unnamed, beyond.wrongly].map(percent),
  )
})
