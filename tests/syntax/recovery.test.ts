// A half-typed file is the normal case: one bad line costs that line.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { parseSection } from '../../server/src/syntax/parser.ts'
import { cutSections } from '../../server/src/syntax/sections.ts'
import { blocksIn, print } from '../../server/src/syntax/tree.ts'
import { findingsOf } from '../checks/marks.ts'

const seal = ['seal {', '  shaft-size: 35 mm', '  free-length: 148 mm', '  fitted-length: 121 mm', '}']
const factsOf = (text: string): readonly string[] =>
  [...blocksIn(cutSections(text).flatMap((section) => [...parseSection(section).tree.items]))].flatMap(
    (block) => block.items.flatMap((item) => (item.type === 'fact' ? [item.name.text] : [])),
  )

describe('a bad line', () => {
  it.each([
    'free-length:',
    'free-length: 148 mm +',
    'free-length: (148 mm',
    'free-length: "148',
    'free-length: ) ] : ..',
    'free-length: 26 mm ±',
    'free-length: 84..',
    'free-length 148 mm',
    ';;;',
    'free-length: 148 mm [drawing "S',
    ': : :',
    '..',
  ])('%j costs that line', (line) => {
    const text = [...seal.slice(0, 2), `  ${line}`, ...seal.slice(3)].join('\n')
    const facts = factsOf(text)
    expect(facts[0]).toBe('shaft-size')
    expect(facts.at(-1)).toBe('fitted-length')
  })
})

describe('a block that is not closed', () => {
  it('ends before the next block at the left margin', () => {
    const text = `drive a {\n  seal {\n    free-length: 148 mm\ndrive b {\n  gear { ratio: 2.5 }\n}\n`
    expect(cutSections(text)).toHaveLength(2)
    expect(factsOf(text)).toEqual(['free-length', 'ratio'])
  })
})

const examples = resolve(import.meta.dirname, '../../docs/examples')
const demos = readdirSync(examples, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.wright'),
)

describe.each(demos)('every prefix of %s', { timeout: 60_000 }, (demo) => {
  const text = readFileSync(join(examples, demo), 'utf8')

  it('is read, and printed back', () => {
    for (let end = 0; end <= text.length; end++) {
      const prefix = text.slice(0, end)
      const read = cutSections(prefix).map((section) => print(parseSection(section).tree))
      if (read.join('') !== prefix) expect.fail(`up to ${end}: ${prefix.slice(-40)}`)
    }
  })

  it('that ends with a line still answers every check', () => {
    const ends = [...text.matchAll(/\n/g)].map(({ index }) => index + 1)
    // As many as can be checked in a moment, evenly spread.
    const every = Math.max(1, Math.floor(ends.length / 40))
    for (const end of ends.filter((_, i) => i % every === 0))
      expect(() => findingsOf(text.slice(0, end), allChecks)).not.toThrow()
  })
})
