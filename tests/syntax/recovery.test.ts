// A half-typed file is the normal case: one bad line costs that line.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { parseSection } from '../../server/src/syntax/parser.ts'
import { cutSections } from '../../server/src/syntax/sections.ts'
import { blocksIn, print } from '../../server/src/syntax/tree.ts'
import { findingsOf } from '../checks/marks.ts'
import { fixed } from '../checks/offers.ts'

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

describe('a text without its closing quote', () => {
  const rest = 'drive main {\n  shaft { diameter: 35 mm  length: 2 m }\n}\n'
  const problemsOf = (text: string) =>
    cutSections(text).flatMap((section) =>
      parseSection(section).problems.map(({ type, span }) => [type, section.slice(span.start, span.end)]),
    )

  it.each([
    ['a title', 'job "Refit of the aft shaft {\n  vessel: "x"\n}\n', '"Refit of the aft shaft'],
    ['a title on the line of its facts', 'job "Refit { vessel: "x" }\n', '"Refit'],
    ['a text', 'job "y" {\n  vessel: "Launch: 7\n  status: draft\n}\n', '"Launch: 7'],
    ['a text before a comment', 'job "y" {\n  vessel: "Launch 7 # old\n  status: draft\n}\n', '"Launch 7'],
    ['a text before a brace', 'job "y" { status: draft  vessel: "Launch 7 }\n', '"Launch 7'],
    ['a text before a fact', 'job "y" { vessel: "Launch 7  status: draft }\n', '"Launch 7'],
    ['a text before a text', 'job "y" { vessel: "Launch 7  revision: "B" }\n', '"Launch 7'],
    ['an origin', 'shaft x { length: 2 m [drawing "S-07]  diameter: 35 mm }\n', '"S-07'],
    ['the last of a line', 'shaft x {\n  length: 2 m [drawing "S-07\n  diameter: 35 mm\n}\n', '"S-07'],
    ['a path', 'use "parts/stock.wright\n', '"parts/stock.wright'],
  ])('costs itself and is one problem: %s', (_what, text, span) => {
    expect(problemsOf(text + rest)).toEqual([['text-not-closed', span]])
    expect(problemsOf(rest + text + rest)).toEqual([['text-not-closed', span]])
    expect(factsOf(text + rest)).toEqual([
      ...[...text.matchAll(/([a-z]+): (?!7)/g)].map(([, name]) => name),
      'diameter',
      'length',
    ])
  })

  it('is one finding, and its fix gives the text back', () => {
    const text = `job "Refit of the aft shaft {\n  vessel: "x"\n  status: draft\n}\n\n${rest}`
    const whole = text.replace('shaft {', 'shaft" {')
    const checksOf = (of: string) => findingsOf(of, allChecks).findings.map(({ check }) => check)
    expect(checksOf(text).filter((check) => check !== 'job/text-not-closed')).toEqual(checksOf(whole))
    expect(fixed(text, 'job/text-not-closed', 'Add the closing quote')).toBe(whole)
  })

  it('may have quotes with a backslash in it, a closed one braces', () => {
    expect(problemsOf('job "a \\"b\\" {\n  vessel: "x {y}"\n}\n')).toEqual([
      ['text-not-closed', '"a \\"b\\"'],
    ])
  })
})

describe('a block behind a fact on its line', () => {
  const port =
    'drive port {\n  propeller { diameter: 400 mm  turns: left-hand }\n}\nbattery house { nominal: 96 V }\n'
  const errorsOf = (text: string) =>
    findingsOf(text, allChecks).findings.flatMap(({ check, severity }) =>
      severity === 'error' ? [check] : [],
    )

  it.each([
    ['drive starboard { like: port  propeller { turns: right-hand } }', ['like', 'turns']],
    ['drive starboard { like: port propeller { turns: right-hand } }', ['like', 'turns']],
    ['drive starboard { battery: house  bearing stern { at: 1 m } }', ['battery', 'at']],
    ['drive starboard {\n  like: port  move after dry-1 { done: 2026-03-04 }\n}', ['like', 'done']],
    [
      'drive starboard { gear { ratio: 2.5 [maker]  turns: same } battery: house  shaft { length: 2 m } }',
      ['battery', 'ratio', 'turns', 'length'],
    ],
  ])('is one: %s', (line, facts) => {
    const sections = cutSections(`${port}${line}\n`)
    expect(sections.flatMap((section) => parseSection(section).problems)).toEqual([])
    expect(factsOf(`${line}\n`)).toEqual(facts)
    const laid = formatText(line)
    expect(factsOf(laid)).toEqual(facts)
    expect(formatText(laid)).toBe(laid)
  })

  it('has no finding of its own, and an unknown kind one', () => {
    const drive = (kind: string) => `${port}drive starboard { like: port  ${kind} { turns: right-hand } }\n`
    expect(errorsOf(drive('propeller'))).toEqual([])
    expect(errorsOf(drive('propellor'))).toEqual(['job/block-unknown'])
  })

  it('needs a value before it', () => {
    expect(factsOf('drive d { battery: house { nominal: 96 V } }\n')[0]).toBe('battery')
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
