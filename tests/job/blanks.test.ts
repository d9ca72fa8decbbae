// `?` stands for what is not known yet. The language's own rules.
import { describe, expect, it } from 'vitest'
import { statedFact } from '../../server/src/areas/common/stated-fact.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import type { Block } from '../../server/src/job/model.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { parseSection } from '../../server/src/syntax/parser.ts'
import { print } from '../../server/src/syntax/tree.ts'
import { vocabulary } from '../../server/src/vocabulary/index.ts'
import { read } from './meaning.ts'

const blockIn = (text: string): Block => {
  const [block] = read(text).blocks
  if (!block) throw new Error('no block')
  return block
}

/** Types of the problems other than that a fact is missing. */
const problemsOf = (text: string): readonly string[] =>
  read(text)
    .problems.map(({ type }) => type)
    .filter((type) => !/-missing$/.test(type))

describe('a blank is read in place of a number, a word or a text', () => {
  const values = [
    ['shaft', 'diameter: ? mm'],
    ['shaft', 'diameter: ? mm h9'],
    ['shaft', 'diameter: 35 mm ± ? mm'],
    ['shaft', 'length: ? - 200 mm'],
    ['shaft', 'length: 2 * (? + 3 mm)'],
    ['shaft', 'material: ?'],
    ['coupling', 'kind: ?'],
    ['coupling', 'gap-variation: max ? mm   [maker]'],
    ['coupling', 'bolts: 4 x M? class 8.8, ? N·m'],
    ['battery house', 'window: ?..? V'],
    ['motor', 'terminals: U, ?, W'],
    ['foot aft', 'across: ? mm port'],
    ['foot aft', 'across: 140 mm ?'],
    ['reading dry', 'taken: ?'],
    ['reading dry', 'gaps: top ? mm, starboard 1.80 mm'],
    ['seal', 'compression: ? mm +3/-2 mm'],
  ] as const

  it.each(values)('%s: %s', (heading, fact) => {
    const text = `${heading} {\n  ${fact}\n}\n`
    expect(problemsOf(text).filter((type) => type !== 'misplaced-block')).toEqual([])
    expect(print(parseSection(text).tree)).toBe(text)
    expect(parseSection(text).problems).toEqual([])
    expect(formatText(text)).toBe(text)
    const block = blockIn(text)
    const name = fact.slice(0, fact.indexOf(':'))
    expect(block.facts.has(name)).toBe(false)
    expect([...block.unread]).toEqual([name])
    expect([...block.blanks]).toEqual([name])
  })

  it('in every fact of every kind, alone', () => {
    for (const { kind, facts } of Object.values(vocabulary))
      for (const name of Object.keys(facts)) {
        const block = blockIn(`${kind} { ${name}: ? }`)
        expect([kind, ...block.blanks]).toEqual([kind, name])
      }
  })

  it('in the lines of a phase map, and for a foot of a move', () => {
    const text = 'drive main { phase-map { A to ?, B to V }  move after dry { fwd-port: up ? flats } }'
    const [map, move] = blockIn(text).children
    expect([...(map?.blanks ?? [])]).toEqual(['pairs'])
    expect([...(move?.blanks ?? [])]).toEqual(['fwd-port'])
    expect(move?.others.size).toBe(0)
  })

  it('only in a value: a name, a heading and a text of its own are none', () => {
    expect(problemsOf('drive ? { }')).toEqual(['heading'])
    expect(problemsOf('job "x" { vessel: "?" }')).toEqual([])
    expect(blockIn('job "x" { vessel: "?" }').blanks.size).toBe(0)
  })
})

describe('layout', () => {
  it('one space before the unit, none added where none is needed', () => {
    expect(formatText('shaft {\nlength: ?mm\n}')).toBe('shaft {\n  length: ? mm\n}\n')
    expect(formatText('foot a { from-coupling: ?  across:?   mm port }')).toBe(
      'foot a { from-coupling: ?  across: ? mm port }\n',
    )
  })
})

describe('nothing is assumed in its place', () => {
  const diameterOf = (text: string, i = 0) => {
    const block = read(text).blocks[i]
    return () => statedFact(block, 'shaft.diameter')
  }

  it('a plan that needs it says that it is not known yet', () => {
    expect(diameterOf('shaft { diameter: ? mm }')).toThrow('diameter of the shaft is not known yet')
  })

  it('nor in a block that is like the one it stands in', () => {
    const text = 'shaft stock { diameter: ? mm  length: 2 m }\nshaft own { like: stock }'
    const [, own] = read(text).blocks
    expect([...(own?.blanks ?? [])]).toEqual(['diameter'])
    expect(problemsOf(text)).toEqual([])
    expect(diameterOf(text, 1)).toThrow('not known yet')
  })

  it('a blank of its own comes before the value of the block it is like', () => {
    const text = 'shaft stock { diameter: 35 mm }\nshaft own { like: stock  diameter: ? mm }'
    expect(diameterOf(text, 1)).toThrow('not known yet')
  })

  it('nor in what is worked out from it, here or in another block', () => {
    const seal = blockIn('seal { free-length: ? mm  fitted-length: free-length - 27 mm }')
    expect([...seal.blanks]).toEqual(['free-length', 'fitted-length'])
    const files = {
      'a.wright': 'use "b.wright"\nshaft own { length: stock.length - 3 mm }',
      'b.wright': 'shaft stock { length: ? }',
    }
    expect([...(read(files).blocks[0]?.blanks ?? [])]).toEqual(['length'])
    expect(read(files).problems).toEqual([])
  })
})

it('a blank in a used file is read there as here', () => {
  const file = linkFile('a.wright', openDocument('use "b.wright"'), () =>
    openDocument('shaft b { length: ? }'),
  )
  expect(file.problems).toEqual([])
})
