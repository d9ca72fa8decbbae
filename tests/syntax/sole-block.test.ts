// The heading that is read without parsing is the one that the parser finds. No outside source: the parser is the measure.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { headingWord } from '../../server/src/job/bind.ts'
import { parseSection } from '../../server/src/syntax/parser.ts'
import { cutSections } from '../../server/src/syntax/sections.ts'
import { soleBlock } from '../../server/src/syntax/sole-block.ts'
import { anyEdit, applied } from '../fuzz/edits.ts'
import { randomFrom } from '../fuzz/random.ts'
import { jobs, nearly, texts } from './texts.ts'

const examples = resolve(import.meta.dirname, '../../docs/examples')
const demos = readdirSync(examples, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.wright'))
  .map((path) => readFileSync(join(examples, path), 'utf8'))

const byParser = (section: string) =>
  parseSection(section).tree.items.map((item) =>
    item.type === 'block' ? { kind: item.kind.text, name: headingWord(item) } : item.type,
  )

function agrees(section: string): void {
  const sole = soleBlock(section)
  if (sole) expect(byParser(section), section).toEqual([sole])
}

/** Lines that nearly show a block, in any order. */
const lines = fc
  .array(
    fc.constantFrom(
      ...['gear spare {', 'gear {', 'job "x" {', 'move after dry-1 {', 'a b c d {', 'like: x gear {', '{'],
      ...['foot a { at: 1 mm }', 'gear { ratio: 2', 'ratio: 2 }', 'a { b { c: 1 }', '"a {" {', 'x: "y" {'],
      ...['}', '} }', '  }', '} # }', '}\u2028', '# {', 'x: 1 # {', 'x: "# {"', 'x: "', 'x: 6" {', "x: '{'"],
      ...['“ {', 'x: \\" {', '( {', ') }', '[ {', 'x: (', '<<<<<<< a', '=======', '>>>>>>> b', 'use "x"'],
      ...['', 'x: 1', 'gear', 'gear spare', '\tgear\t{', '\u00A0gear {', 'gear: {', 'gear, {', 'gear 2 {'],
      ...['job "a\\" {', 'job "a" "b" {', 'job "a" b {', 'job "# a" {', 'job x"a" {', 'job:"a"b {'],
    ),
    { maxLength: 8 },
  )
  .chain((all) => fc.constantFrom('\n', '\r\n', '\r', '\u2028').map((end) => all.join(end)))

describe('the heading read without parsing', () => {
  it('is that of every block of the demo jobs, but for a few', () => {
    const sections = demos.flatMap(cutSections)
    sections.forEach(agrees)
    const blocks = sections.filter((section) => byParser(section).some((item) => typeof item !== 'string'))
    expect(blocks.length).toBeGreaterThan(10)
    const read = blocks.filter((section) => soleBlock(section) !== undefined)
    expect(read.length / blocks.length).toBeGreaterThan(0.7)
  })

  it('is the one of the parser in any text', () => {
    const all = fc.oneof(lines, lines, texts, nearly, jobs)
    fc.assert(
      fc.property(all, (text) => {
        agrees(text)
        cutSections(text).forEach(agrees)
      }),
      { numRuns: 5000 },
    )
  })

  it('is the one of the parser in a damaged demo job', () => {
    fc.assert(
      fc.property(fc.constantFrom(...demos), fc.nat(), (demo, seed) => {
        const random = randomFrom(seed)
        const sections = cutSections(demo)
        let text = random.pick(sections)
        for (let i = 0; i < 4; i++) {
          text = applied(text, anyEdit({ text, size: 2 * text.length, random }))
          agrees(text)
        }
      }),
      { numRuns: 300 },
    )
  })

  it.each([
    ['a brace in quotes', 'gear { x: "a } # "\n}\nseal {\n}\n'],
    ['an escaped quote', 'job "a\\" { # "\n}\n'],
    ['one version of a conflict', `gear {\n<<<<<<< a\n=======\nb {\n>>>>>>> b\n}\n  c {\n  }\n}\n`],
    ['brackets too deep', `drive {\n x: ${'('.repeat(64)}\ngear {\n)\n}\nseal {\n}\n}\n`],
    ['a brace behind a value', 'drive {\nmotor: {\n}\ngear {\n}\n}\n'],
    ['two blocks', 'gear a {\n}\ngear b {\n}\n'],
  ])('is not guessed where there may be %s', (_, section) => {
    expect(soleBlock(section)).toBeUndefined()
  })
})
