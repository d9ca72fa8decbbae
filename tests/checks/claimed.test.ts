// What a job that is issued or as-built claims, and what does not count as said. The language's own rules (no outside source).
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from './marks.ts'

const asBuilt = readFileSync(resolve('docs/examples/survey-launch-as-built.wright'), 'utf8')
const today = '2026-06-01'
const over = (...changes: readonly (readonly [string | RegExp, string])[]) => {
  let text = asBuilt
  for (const [from, to] of changes) {
    expect(text).toMatch(from)
    text = text.replace(from, to)
  }
  return findingsOf(text, allChecks, { today }).findings
}
const messages = (found: ReturnType<typeof over>, check: string) =>
  found.filter((finding) => finding.check === check).map(({ severity, message }) => `${severity} ${message}`)

describe('a concession that ran out', () => {
  const outside = [
    /offsets: top -0\.04 mm, starboard 0\.04 mm, bottom 0\.04 mm/,
    'offsets: top -0.44 mm, starboard 0.04 mm, bottom 0.44 mm',
  ] as const
  const granted = (until: string) =>
    over(outside, [
      /$/,
      `\nconcession alignment/offset-outside {\n  on: main.afloat-1\n  reason: "as agreed"\n  granted-by: "design office"\n  until: ${until}\n}\n`,
    ])
  const verdict = (until: string) =>
    granted(until)
      .filter(({ check }) => check === 'alignment/offset-outside')
      .map(({ severity }) => severity)

  it('still accepts what it was valid for, in a job that is as-built', () => {
    expect(verdict('2026-03-19')).toEqual(['information'])
    expect(verdict('2026-05-01')).toEqual(['information'])
  })

  it('does not accept a reading that was taken after it ended', () => {
    expect(verdict('2020-01-01')).toEqual(['error'])
    expect(verdict('2026-03-18')).toEqual(['error'])
    const expired = granted('2020-01-01').find(({ check }) => check === 'job/concession-expired')
    expect(expired?.detail).toBeUndefined()
  })
})

describe('what was found on the boat', () => {
  it('is assumed if it is worked out from an assumed value', () => {
    const found = over(
      ['bore:      60 mm', 'bore:      60 mm [assumed]'],
      [/fitted-length: +121 mm +\[measured\]/, 'fitted-length: shaft-log.bore + 61 mm [measured]'],
    )
    expect(messages(found, 'job/fact-assumed')).toEqual([
      'error fitted-length is assumed, but an as-built job records what was found on the boat.',
    ])
  })

  it('is not worked out', () => {
    const found = over([/fitted-length: +121 mm/, 'fitted-length: free-length - 27 mm'])
    expect(messages(found, 'job/fact-assumed')).toEqual([
      'error fitted-length is worked out, but an as-built job records what was found on the boat.',
    ])
    const sum = over([/fitted-length: +121 mm/, 'fitted-length: 120 mm + 1 mm'])
    expect(messages(sum, 'job/fact-assumed')).toEqual([])
  })
})

describe('a text', () => {
  it.each(['?', '-', '.', '\u200b', ' '])('without a letter or a digit is not filled in: %j', (text) => {
    expect(messages(over(['"Launch 07"', `"${text}"`]), 'job/fact-missing')).toEqual([
      'error One fact is still missing: vessel.',
    ])
    expect(messages(over(['"fitter 2 (invented)"', `"${text}"`]), 'job/fact-missing')).toEqual([
      'error One fact is still missing: by.',
    ])
  })

  it('with one counts', () => {
    for (const text of ['7', 'B', 'Ægir'])
      expect(messages(over(['"Launch 07"', `"${text}"`]), 'job/fact-missing')).toEqual([])
  })
})

describe('half a value', () => {
  it.each([
    ['84..108 V', 'max 108 V', 'low end of window'],
    ['84..108 V', 'min 84 V', 'high end of window'],
    ['72..120 V', 'max 120 V', 'low end of input'],
    ['72..120 V', 'min 72 V', 'high end of input'],
    ['4 x M10 class 8.8, 45 N·m', '4 x M10 class 8.8', 'torque of bolts'],
  ])('%s written as %s lacks the %s', (from, to, lacks) => {
    expect(messages(over([from, to]), 'job/fact-missing')).toEqual([
      `error One fact is still missing: ${lacks}.`,
    ])
    const review = over([from, to], ['as-built\n', 'for-review\n'])
    expect(messages(review, 'job/fact-missing')).toEqual([])
  })
})

describe('what is not there', () => {
  it('is the feed, though the phase cable ends at the controller', () => {
    const found = over([/ {2}cable feed \{[\s\S]*?\n {2}\}\n/, ''])
    expect(messages(found, 'cable/missing')).toEqual([
      'error No cable ends at the controller from the battery.',
    ])
  })

  it('is not asked for where a drive is like one that cannot be found', () => {
    const found = over([/$/, '\ndrive aft { like: mian  propeller { turns: left-hand } }\n'])
    const errors = found.filter(({ severity }) => severity === 'error').map(({ check }) => check)
    expect(errors.sort()).toEqual(['job/as-built-with-errors', 'job/unresolved'])
  })
})

describe('a move', () => {
  const withMove = (text: string) => over([/ {2}controller \{/, `  ${text}\n\n  controller {`])

  it('with a date and no feet says too little', () => {
    const found = withMove('move after afloat-1 { done: 2026-03-20  by: "fitter 2" }')
    expect(messages(found, 'alignment/move-without-feet')).toEqual([
      'warning This move after afloat-1 does not say which feet were moved.',
    ])
  })

  it('with a name and no date reads as done, and is planned', () => {
    const found = withMove('move after afloat-1 { by: "fitter 2"  aft-port: up 1 flat }')
    expect(found.find(({ check }) => check === 'alignment/move-planned')?.detail).toBe(
      'It says who made it and not when. It reads as done, and does not count as made.',
    )
  })

  it('with a misspelt date says which fact was meant', () => {
    const found = withMove('move after afloat-1 { don: 2026-03-20  by: "fitter 2"  aft-port: up 1 flat }')
    expect(found.find(({ check }) => check === 'job/fact-unknown')?.todo).toMatch(/Did you mean.*done/)
    expect(messages(found, 'alignment/move-planned')).toEqual([])
    expect(messages(found, 'job/value-not-allowed')).toEqual([])
  })

  it('that is planned and noted as made is one finding', () => {
    const feet = 'aft-port: up 1 flat  aft-stbd: up 1 flat  fwd-port: up 1 flat  fwd-stbd: up 1 flat'
    const found = withMove(
      `move after afloat-1 { done: 2026-03-20  by: "fitter 2"  ${feet} }\n  move after afloat-1 { ${feet} }`,
    )
    expect(messages(found, 'alignment/move-noted-twice')).toHaveLength(1)
    expect(messages(found, 'alignment/move-planned')).toEqual([])
  })
})

describe('a concession', () => {
  it('of a fault in the text says that it cannot be accepted', () => {
    const found = over(
      ['bore:      60 mm', 'bore:      60,5 mm'],
      [
        /$/,
        '\nconcession job/decimal-comma {\n  on: main.shaft-log\n  reason: "as agreed"\n  granted-by: "design office"\n  until: 2027-01-01\n}\n',
      ],
    )
    expect(messages(found, 'job/concession-unused')).toEqual([
      'warning A finding of job/decimal-comma cannot be accepted: it is a fault in the text.',
    ])
  })
})
