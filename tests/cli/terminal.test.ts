// Control characters from a job, a file name or an argument are shown, and cannot control the terminal.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { harmless } from '../../server/src/syntax/harmless.ts'
import { folder, put, shaftwright } from './run-cli.ts'

/** Text direction marks (Unicode Standard Annex 9, section 2) and the two line separators that are not control characters. */
const turning = [
  ...[0x061c, 0x200e, 0x200f, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e],
  ...[0x2066, 0x2067, 0x2068, 0x2069, 0x2028, 0x2029],
]

/** What steers a terminal (ECMA-48: all of C0 and C1 but the end of a line), or turns the order of what it shows. */
const steering = (text: string): readonly string[] =>
  [...text]
    .map((sign) => sign.codePointAt(0) ?? 0)
    .filter(
      (code) => (code < 0x20 && code !== 0x0a) || (code >= 0x7f && code <= 0x9f) || turning.includes(code),
    )
    .map((code) => code.toString(16))

const hostile = '\x1B[2J\x1B]0;owned\x07\x9B31m\u202Eevil\u061C\u200E\u200F\u2066'
const job = `job "${hostile}" { vessel: "${hostile}" revision: "${hostile}" }
drive main {
  coupling { flange-diameter: 125 mm gauge-diameter: 110 mm gap-variation: max 0.10 mm [maker "${hostile}"] }
  bed {
    adjuster: stud-and-nuts
    thread: "${hostile}"
    foot aft-port { from-coupling: 180 mm across: 140 mm port }
    foot aft { from-coupling: 180 mm across: 140 mm starboard }
    foot fwd { from-coupling: 560 mm across: 140 mm starboard }
  }
  reading dry-1 { taken: 2026-03-04 gauge: 0.02 mm gaps: top 1.2 mm, starboard 1.1 mm, bottom 1 mm, port 1.1 mm note: "${hostile}" }
  seal { ${hostile}: 3 mm shaft-size: ${hostile} }
}
`
const name = `a\x1B[31m\n\u202Eb.wright`

beforeAll(() => {
  put(name, job)
  put('b.wright', `job "x" { vessel: "y"  revision:"z" }\n`)
})

describe('nothing steers the terminal in what is printed by', () => {
  it.each([
    ['check', ['check', '.']],
    ['check in JSON', ['check', '.', '--format', 'json']],
    ['plan', ['plan', name]],
    ['plan in JSON', ['plan', name, '--format', 'json']],
    ['plan of no drive', ['plan', name, '--drive', hostile]],
    ['format', ['format', '--check', '.']],
    ['a file that is not there', ['check', `${hostile}.wright`]],
    ['an option that is none', ['check', `--${hostile}`]],
    ['a command that is none', [hostile]],
    ['a day that is none', ['check', '--today', hostile]],
    ['help for what is none', ['help', hostile]],
  ])('%s', { timeout: 60_000 }, (_, args) => {
    const { out, err } = shaftwright(args, folder)
    expect(`${out}${err}`.length).toBeGreaterThan(10)
    expect(steering(`${out}${err}`)).toEqual([])
  })
})

it('JSON says the same as what was written', { timeout: 60_000 }, () => {
  const { out } = shaftwright(['check', '.', '--format', 'json'], folder)
  const { jobs } = JSON.parse(out) as { jobs: { file: string; vessel: string }[] }
  expect(jobs[0]).toMatchObject({ file: name, vessel: hostile })
})

it('colours are ours alone', { timeout: 60_000 }, () => {
  const { out } = shaftwright(['check', '.'], folder, { env: { FORCE_COLOR: '1' } })
  expect(out).toContain('\u001B[31merror\u001B[39m')
  const colours = [1, 2, 22, 31, 33, 36, 39].map((code) => `\u001B[${code}m`)
  expect(steering(colours.reduce((text, colour) => text.replaceAll(colour, ''), out))).toEqual([])
})

it('any text is harmless, and stays as long', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(steering(harmless(text))).toEqual([])
      expect(harmless(text)).not.toContain('\n')
      expect(harmless(text).length).toBe(text.length)
      expect(harmless(harmless(text))).toBe(harmless(text))
    }),
  )
})

it('a command prints through terminal.ts alone', () => {
  const cli = resolve(import.meta.dirname, '../../server/src/cli')
  const beside = readdirSync(cli).filter(
    (file) =>
      file !== 'terminal.ts' && /\bconsole\.|\bstd(?:out|err)\b/.test(readFileSync(join(cli, file), 'utf8')),
  )
  expect(beside).toEqual([])
})
