import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cursorContext } from '../../server/src/editor/completion/cursor-context.ts'
import { openDocument } from '../../server/src/job/document.ts'

function contextAt(marked: string) {
  const text = marked.replace('$0', '')
  const [section] = openDocument(text).sections
  if (!section || section.text !== text) throw new Error('one section')
  return cursorContext(section, marked.indexOf('$0'))
}

describe('where a cursor stands', () => {
  it.each([
    ['$0', { on: 'item', frames: [], word: '' }],
    ['dri$0', { on: 'item', word: 'dri' }],
    ['shaft { dia$0m }', { on: 'item', word: 'dia', replace: { start: 8, end: 12 } }],
    ['shaft { dia$0: 3 mm }', { on: 'item', next: 'colon' }],
    ['sea$0 { }', { on: 'item', next: 'brace', frames: [] }],
    ['drive $0', { on: 'heading', kind: 'drive', words: [] }],
    ['move after dr$0 { }', { on: 'heading', kind: 'move', words: ['after'], word: 'dr' }],
    ['shaft { diameter: $0', { on: 'value', fact: 'diameter', entry: 0, part: 0 }],
    ['shaft { diameter: 35 m$0', { on: 'value', number: '35', word: 'm' }],
    ['shaft { diameter: 35 mm h$0', { on: 'value', number: undefined, part: 1 }],
    ['battery b { window: 84..$0', { on: 'value', joined: true, part: 0 }],
    ['shaft { length: 2 * a.$0', { on: 'value', joined: true, word: 'a.' }],
    ['reading r { gaps: top 1 mm, $0, port 2 mm', { on: 'value', entry: 1, part: 0 }],
    ['phase-map { A to U, B $0', { on: 'value', fact: 'pairs', entry: 1, part: 1 }],
    ['shaft { length: 2 m [dra$0', { on: 'provenance', word: 'dra' }],
    ['use "parts/$0"', { on: 'path', quoted: true, word: 'parts/' }],
    ['use "parts/$0', { on: 'path', quoted: true, word: 'parts/' }],
    ['use $0', { on: 'path', quoted: false }],
  ])('%s', (marked, wanted) => {
    expect(contextAt(marked)).toMatchObject(wanted)
  })

  it.each(['# dr$0', 'job "$0"', 'shaft { length: 2 m [maker] $0', 'nonsense $0', 'job "a" { vessel: "b$0'])(
    'means nothing here: %s',
    (marked) => {
      expect(contextAt(marked)).toBeUndefined()
    },
  )

  it('knows the blocks around it though none is closed, and what is in them', () => {
    const context = contextAt('drive d {\n  shaft { length: 2 m }\n  bed {\n    adjuster: shims\n    th$0\n')
    expect(context?.frames.map(({ kind, facts, blocks }) => ({ kind, facts, blocks }))).toEqual([
      { kind: 'drive', facts: [], blocks: ['shaft', 'bed'] },
      { kind: 'bed', facts: ['adjuster'], blocks: [] },
    ])
  })

  it('counts what stands behind, but not the word it is in', () => {
    const [frame] = contextAt('shaft {\n  len$0: 2 m\n  material: a\n}')?.frames ?? []
    expect(frame?.facts).toEqual(['material'])
  })

  it('replaces a span around itself, on one line, in any text', () => {
    const pieces = fc.constantFrom(
      'shaft',
      ' {',
      '}',
      '\n',
      ' ',
      ': ',
      ', ',
      '3',
      ' mm',
      '"',
      '[',
      ']',
      '..',
      '.',
      '±',
      '-',
      '#',
      'gaps:',
      '2026-',
    )
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), fc.nat(100), (list, at) => {
        for (const section of openDocument(list.join('')).sections) {
          const offset = Math.min(at, section.text.length)
          const context = cursorContext(section, offset)
          if (!context) continue
          const { start, end } = context.replace
          expect(start <= offset && offset <= end && end <= section.text.length).toBe(true)
          expect(section.text.slice(start, end)).not.toMatch(/[\r\n]/)
          expect(context.word).toBe(section.text.slice(start, offset))
        }
      }),
    )
  })
})
