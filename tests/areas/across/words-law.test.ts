// How findings and plans read, whatever the job: one advice is given once, sentences begin where they should, and no figure has digits that no gauge
// shows (common practice, no source).
import { expect, it } from 'vitest'
import { forbidden } from '../../checks/wording.ts'
import { randomFrom } from '../../fuzz/random.ts'
import { randomDrive } from '../random-drive.ts'
import { saidOf } from '../said-of.ts'

const laws: readonly (readonly [what: string, fault: RegExp])[] = [
  ['a capital after a semicolon', /; (?!U\b)[A-Z][a-z]/],
  ['an advice twice in a sentence or the next', /[Rr]ead again[^.]*[.;,][^.]*read again/],
  [
    'a sign where a way is meant',
    /-\d[\d.]* (?:±[^,;]*)?(?:mm|in|mrad) (?:up|down|high|low|to port|to starboard)/,
  ],
  ['inches finer than any gauge', /\d\.\d{6,} in\b/],
  ['two stops', /[^.]\.\.(?!\.)|\? \.|\.;/],
  ['a lower case word after a stop', /[a-z]{2}\. [a-z]/],
  ['what is none', /\bNaN\b|\bundefined\b|\bInfinity\b|\bnull\b|\[object/],
  ['words that read as translated', /\bnought\b|\bhangs? on\b|\bput (?:it|that|them) right\b/],
  ...forbidden.map((fault) => ['words that read as translated', fault] as const),
]

it('every sentence of 300 jobs keeps the laws of the house', () => {
  const random = randomFrom(3)
  let sentences = 0
  for (let i = 0; i < 300; i++) {
    const text = randomDrive(random)
    for (const words of saidOf(text).words.flatMap((said) => said.split('\n'))) {
      sentences += 1
      for (const [what, fault] of laws) expect(fault.test(words), `${what}: ${words}\n${text}`).toBe(false)
    }
  }
  expect(sentences).toBeGreaterThan(10_000)
})
