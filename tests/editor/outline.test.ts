// Outline, folds and selections: the language's own rules (design decisions, no outside source).
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { foldsOf } from '../../server/src/editor/outline/folding.ts'
import { selectionSpans } from '../../server/src/editor/outline/selection-ranges.ts'
import { type BlockSymbol, symbolsOf } from '../../server/src/editor/outline/symbols.ts'
import { edit, openDocument } from '../../server/src/job/document.ts'
import { openMarked } from './marked.ts'

const text = readFileSync(
  resolve(import.meta.dirname, '../../docs/examples/survey-launch-as-built.wright'),
  'utf8',
)

const outline = (of: string) => openDocument(of).sections.flatMap(symbolsOf)

describe('the outline', () => {
  it('has the blocks with their names, what they are and what they say first', () => {
    const shown = ({ name, detail, children }: BlockSymbol): unknown =>
      children.length === 0 ? [name, detail] : [name, detail, children.map(shown)]
    const job = `job "Launch 07" { vessel: "A" }
drive main {
  shaft { length: 2 m
    like: stock
    diameter: 35 mm   h9 }
  motor propulsion { speed: 1500 rpm
    power: 15 kW
  }
  bed {
    foot aft { }
  }
  reading dry-1 { taken: 2026-03-04 }
  move after dry-1 { done: 2026-03-05 }
}
concession seal/compression-outside { on: main.seal }
`
    expect(outline(job).map(shown)).toEqual([
      ['Launch 07', 'job, vessel "A"'],
      [
        'main',
        'drive',
        [
          ['shaft', 'like stock, diameter 35 mm h9'],
          ['propulsion', 'motor, power 15 kW, speed 1500 rpm'],
          ['bed', '', [['aft', 'foot']]],
          ['dry-1', 'reading, taken 2026-03-04'],
          ['move after dry-1', 'move, done 2026-03-05'],
        ],
      ],
      ['seal/compression-outside', 'concession, on main.seal'],
    ])
  })

  it('is kept for what an edit does not touch', () => {
    const before = openDocument(text)
    const after = edit(before, text.length, text.length, '\nbattery spare { }\n')
    const [first, last] = [before.sections[0], after.sections.at(-1)]
    expect(first && symbolsOf(first)).toBe(after.sections[0] && symbolsOf(after.sections[0]))
    expect(last && symbolsOf(last).map(({ name }) => name)).toEqual(['spare'])
  })

  it('of any beginning of a demo has no empty name, and every name inside its block', () => {
    const sound = ({ name, span, nameSpan, children }: BlockSymbol): boolean =>
      name !== '' && span.start <= nameSpan.start && nameSpan.end <= span.end && children.every(sound)
    fc.assert(fc.property(fc.nat(text.length), (length) => outline(text.slice(0, length)).every(sound)))
  })
})

describe('folds', () => {
  const folds = (of: string) =>
    foldsOf(openDocument(of)).map(({ first, last, of: what }) => [first, last, what])

  it('are blocks of several lines; a closing brace on its own stays in sight', () => {
    expect(folds('drive d {\n  shaft { }\n  bed {\n    adjuster: shims\n  }\n}\n')).toEqual([
      [0, 4, 'block'],
      [2, 3, 'block'],
    ])
    expect(folds('seal {\n  free-length: 148 mm }\n')).toEqual([[0, 1, 'block']])
    expect(folds('seal {\r\n  free-length: 148 mm\r\n')).toEqual([[0, 1, 'block']])
    expect(folds('seal { }\n')).toEqual([])
  })

  it('are comments below each other, not those behind something', () => {
    expect(folds('# a\n# b\n\n# c\nseal { # d\n}\n')).toEqual([[0, 1, 'comments']])
    expect(folds('shaft { }\nseal {\n  # a\n  # b\n  # c\n}\n# d\n')).toEqual([
      [1, 4, 'block'],
      [2, 4, 'comments'],
    ])
  })

  it('are `use` lines below each other', () => {
    expect(folds('use "a.wright"\nuse "b.wright"\nuse "c.wright"\n\nuse "d.wright"\n')).toEqual([
      [0, 2, 'uses'],
    ])
  })

  it('lie in the text, whatever its beginning is', () => {
    fc.assert(
      fc.property(fc.nat(text.length), (length) => {
        const part = text.slice(0, length)
        const lines = part.split('\n').length
        for (const { first, last } of foldsOf(openDocument(part))) {
          expect(first).toBeLessThan(last)
          expect(last).toBeLessThan(lines)
        }
      }),
    )
  })
})

describe('a selection grows', () => {
  const grown = (marked: string) => {
    const { at } = openMarked(marked)
    return selectionSpans(at.section, at.offset)
      .map(({ start, end }) => at.section.text.slice(start, end))
      .toReversed()
  }

  it.each([
    [
      'from a word over the value, the fact, the body and the block',
      'drive d {\n  shaft { diameter: 3$05 mm [maker] }\n}\n',
      [
        '35 mm',
        'diameter: 35 mm [maker]',
        'shaft { diameter: 35 mm [maker] }',
        'drive d {\n  shaft { diameter: 35 mm [maker] }\n}',
      ],
    ],
    [
      'from a unit over its amount',
      'shaft { length: 2 * 1.2 m$0 }',
      ['m', '1.2 m', '2 * 1.2 m', 'length: 2 * 1.2 m', 'shaft { length: 2 * 1.2 m }'],
    ],
    [
      'from a segment over its path',
      'gear { ratio: d.ge$0ar.ratio }',
      ['gear', 'd.gear.ratio', 'ratio: d.gear.ratio', 'gear { ratio: d.gear.ratio }'],
    ],
    [
      'from a segment of a path in brackets',
      'gear { ratio: (d.ge$0ar.ratio) }',
      ['gear', '(d.gear.ratio)', 'ratio: (d.gear.ratio)', 'gear { ratio: (d.gear.ratio) }'],
    ],
    [
      'from one of several',
      'motor { terminals: U, $0V, W }',
      ['V', 'U, V, W', 'terminals: U, V, W', 'motor { terminals: U, V, W }'],
    ],
    [
      'from a name over the heading',
      'motor mai$0n { mass: 2 kg }',
      ['main', 'motor main', 'motor main { mass: 2 kg }'],
    ],
    [
      'from a source',
      'shaft { length: 2 m [drawing "S$0-07"] }',
      [
        '"S-07"',
        '[drawing "S-07"]',
        'length: 2 m [drawing "S-07"]',
        'shaft { length: 2 m [drawing "S-07"] }',
      ],
    ],
    ['from a comment', 'seal { }\n# a w$0ord\n', ['# a word']],
  ])('%s', (_what, marked, expected) => expect(grown(marked)).toEqual(expected))

  it('each time around the one before, at any place of any beginning', () => {
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(text.length), (length, at) => {
        const [section] = openDocument(text.slice(0, length)).sections
        const offset = at % ((section?.text.length ?? 0) + 1)
        const spans = section ? selectionSpans(section, offset) : []
        for (const [i, { start, end }] of spans.entries()) {
          expect(start <= offset && offset <= end).toBe(true)
          const around = spans[i - 1]
          if (around) expect(around.start <= start && end <= around.end).toBe(true)
        }
      }),
    )
  })
})
