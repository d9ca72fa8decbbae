// A half-typed file is the normal case: one bad line costs that line.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { formatText } from '../../server/src/syntax/format.ts'
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

describe('a block at the left margin of one that is open', () => {
  const reading = 'reading dry-1 {\n  taken: 2026-03-04\n}\n'
  const checksOf = (text: string) =>
    findingsOf(text, allChecks).findings.flatMap(({ check, severity }) =>
      severity === 'error' && !/(fact|block)-missing$/.test(check) ? [check] : [],
    )

  it.each([
    ['a reading', reading],
    ['a move', 'move after dry-0 {\n  done: 2026-03-04\n}\n'],
    ['a part without a name', 'shaft {\n  length: 2 m\n}\n'],
    ['several', `gear { ratio: 2 }\n${reading}shaft { length: 2 m }\n`],
  ])('is inside, where that is its place: %s', (_, block) => {
    const text = `drive d {\n  reading dry-0 { taken: 2026-03-03 }\n${block}}\ndrive e { gear { ratio: 2.5 } }\n`
    expect(cutSections(text)).toHaveLength(2)
    expect(checksOf(text)).toEqual([])
    const laid = formatText(text)
    expect(laid).toContain(`  ${block.split('\n', 1)[0]}`)
    expect(formatText(laid)).toBe(laid)
  })

  it('leaves one finding where the drive is not closed', () => {
    expect(checksOf(`drive d {\n  gear { ratio: 2 }\n${reading}`)).toEqual(['job/block-not-closed'])
  })

  it('is a part of its own, where it has a name', () => {
    expect(cutSections('drive d {\n  gear { ratio: 2 }\nshaft stock { length: 2 m }\n')).toHaveLength(2)
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
