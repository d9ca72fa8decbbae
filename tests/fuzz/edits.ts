// Edits as somebody makes them, and as nobody does: characters, words, lines, blocks put in, taken away and put back.
import type { Position } from 'vscode-languageserver/node'
import type { Random } from './random.ts'

export interface Edit {
  readonly from: number
  readonly to: number
  readonly text: string
}

const pieces = [
  ...[
    'a',
    '1',
    ' ',
    '\n',
    '{',
    '}',
    ':',
    ',',
    '.',
    '-',
    '"',
    '#',
    '[',
    ']',
    '(',
    ')',
    '\r\n',
    '\t',
    'é',
    '\u{1F6A2}',
  ],
  ...[
    ' mm',
    ' in',
    '12.5 mm',
    'drive',
    'like: ',
    'use "parts.wright"\n',
    'free-length: 148 mm\n',
    '+/-',
    '..',
    '=',
  ],
  ...['seal { free-length: 148 mm }\n', 'drive spare {\n', '<<<<<<< mine\n', '=======\n', '>>>>>>> theirs\n'],
]

/** The next edit of a text. Around `size` characters it takes away as much as it puts in. */
export function anyEdit({ text, size, random }: { text: string; size: number; random: Random }): Edit {
  const from = outsideOfEnd(text, random.below(text.length + 1))
  const shrinks = random.chance(text.length / (2 * size))
  if (!shrinks && random.chance(0.1)) {
    const start = random.below(text.length + 1)
    return { from, to: from, text: text.slice(start, start + random.below(200)) }
  }
  if (!shrinks) return { from, to: from, text: random.pick(pieces) }
  const gone = random.pick([1, 1, 1, 1, 3, 10, 100])
  const to = outsideOfEnd(text, Math.min(text.length, from + gone))
  return { from, to, text: random.chance(0.2) ? random.pick(pieces) : '' }
}

/** Nothing stands between CR and LF: a position there means the end of the line (LSP 3.17, Position). */
const outsideOfEnd = (text: string, offset: number): number =>
  text[offset - 1] === '\r' && text[offset] === '\n' ? offset - 1 : offset

export const applied = (text: string, { from, to, text: by }: Edit): string =>
  text.slice(0, from) + by + text.slice(to)

/** Where an offset stands, as LSP says it: lines end at CR LF, LF or CR (LSP 3.17, Text Documents). */
export function positionAt(text: string, offset: number): Position {
  let line = 0
  let start = 0
  const ends = /\r\n|\n|\r/g
  for (let end = ends.exec(text); end && ends.lastIndex <= offset; end = ends.exec(text)) {
    line += 1
    start = ends.lastIndex
  }
  return { line, character: offset - start }
}
