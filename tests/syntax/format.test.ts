import fs from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatText } from '../../server/src/syntax/format.ts'
import { Comment, lex, Newline } from '../../server/src/syntax/tokens.ts'

const examples = path.resolve(import.meta.dirname, '../../docs/examples')
const demos = (fs.readdirSync(examples, { recursive: true }) as string[]).filter((file) =>
  file.endsWith('.wright'),
)

const pieces = fc.constantFrom(
  ...[
    'seal',
    'a',
    ' {',
    '}',
    '\n',
    ': ',
    ', ',
    ',',
    '[',
    ']',
    '(',
    ')',
    '+',
    '-',
    ' - ',
    '..',
    '±',
    '+3/-2',
    '26',
    ' mm',
    'mm',
    '"x  y"',
    '"',
  ],
  ...[
    '2026-01-02',
    '*',
    '/',
    '  # c',
    '## d\n',
    '4/0',
    '1 1/4',
    '1  1/4',
    '\r\n',
    '\t',
    '-2',
    'kind: ',
    'foot a { x: 1 mm  y: 2 mm }',
    '35,2',
    '{',
    '\u2028',
    '"x\u2028y"',
  ],
)
const soup = fc.oneof(
  fc.array(pieces, { maxLength: 60 }).map((all) => all.join('')),
  fc.string({ unit: 'binary', maxLength: 80 }),
)
/** The tokens but for line ends, then the comments: texts in quotes are tokens, spaces and all. */
function read(text: string): readonly string[] {
  const { tokens, trivia } = lex(text)
  const code = tokens.filter(({ tokenType }) => tokenType !== Newline)
  const comments = trivia.filter(({ tokenType }) => tokenType === Comment)
  return [...code, ...comments].map(({ image }) => image.trimEnd())
}
const black = (text: string): string => text.replace(/[\s\uFEFF]/g, '')

describe('laying out a job file', () => {
  it.each(demos)('leaves %s as it is', (file) => {
    const text = fs.readFileSync(path.join(examples, file), 'utf8')
    expect(formatText(text)).toBe(text)
  })

  it('indents, lines values up, and keeps comments', () => {
    expect(
      formatText(
        'seal{\n\n\n\tfree-length:148mm # measured\n  compression :26 mm   +3/-2 mm [maker]\n# own line\n}',
      ),
    ).toBe(
      'seal {\n\n  free-length: 148 mm  # measured\n  compression: 26 mm +3/-2 mm   [maker]\n  # own line\n}\n',
    )
  })

  it('begins a new column after a blank line, a block and a comment', () => {
    const runs = [
      'seal {',
      '  a:   1 mm',
      '  bcd: 2 mm',
      '',
      '  e: 3 mm',
      '  # between',
      '  fghi: 4 mm',
      '  jk:   5 mm',
      '  foot l { m: 6 mm }',
      '  n: 7 mm',
      '}',
      '',
    ].join('\n')
    expect(formatText(runs.replace(/ +/g, ' '))).toBe(runs)
  })

  it('keeps the signs of what cannot be read, and a file that would be cut into other blocks', () => {
    expect(formatText('seal {\n;;  §§ : 1 ,, mm   \n}')).toBe('seal {\n  ;; §§ : 1,, mm\n}\n')
    const open = 'foot a { x: 1 mm }\n {\nseal x {\n'
    expect(formatText(open)).toBe(open)
  })

  it('keeps a short block on its line', () => {
    expect(formatText('foot a {from-coupling: 180 mm across:140mm port}')).toBe(
      'foot a { from-coupling: 180 mm  across: 140 mm port }\n',
    )
  })

  it('keeps what a change of spaces would turn into something else', () => {
    for (const line of ['x: a -3 mm', 'x: a - 3 mm', 'x: 1  1/4 in', 'x: 35,2 mm'])
      expect(formatText(line)).toBe(`${line}\n`)
  })

  it('keeps the line ends of Windows', () => {
    expect(formatText('\uFEFFa: 1\r\nb: 2')).toBe('a: 1\r\nb: 2\r\n')
  })

  it('keeps a line separator in a text or a comment', () => {
    expect(formatText('x {\na:"x\u2028y"\u2028b:1 # c\u2028d\n}')).toBe(
      'x {\n  a: "x\u2028y"\n  b: 1  # c\u2028d\n}\n',
    )
  })

  it('changes nothing but white space', () => {
    fc.assert(
      fc.property(soup, (text) => {
        expect(black(formatText(text))).toBe(black(text))
      }),
      { numRuns: 2000 },
    )
  })

  it('leaves every word, number, text in quotes and comment as it was', () => {
    fc.assert(
      fc.property(soup, (text) => {
        expect(read(formatText(text))).toEqual(read(text))
      }),
      { numRuns: 2000 },
    )
  })

  it('twice is once', () => {
    fc.assert(
      fc.property(soup, (text) => {
        const once = formatText(text)
        expect(formatText(once)).toBe(once)
      }),
      { numRuns: 2000 },
    )
  })
})
