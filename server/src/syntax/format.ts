import type { IToken } from 'chevrotain'
import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import { balanced } from './braces.ts'
import { conflictsIn } from './conflicts.ts'
import { cutSections } from './sections.ts'
import * as T from './tokens.ts'

/** Lays a job file out: two spaces an indent, values in a column, at most one blank line in a row. Changes white space only. A line whose
 * reading would change with its spaces keeps them; so does a file that would be cut into other sections, or that would not rest: only
 * one with blocks left open can be like that. Twice is once. */
export const formatText = (text: string): string =>
  formatSections(cutSections(text).map((section) => ({ text: section })))

/** The same for a text that is cut already. What was laid out is kept with each section. */
export function formatSections(sections: readonly { readonly text: string }[]): string {
  const text = sections.map((section) => section.text).join('')
  const lineEnd = /^[^\r\n]*\r\n/.test(text) ? '\r\n' : '\n'
  const laid = sections.map(laidOut)
  if (!laid.every(({ rests }) => rests)) return text
  const lines = laid.flatMap((section) => section.lines)
  const kept = lines.filter((line, i) => line !== '' || (i > 0 && lines[i - 1] !== ''))
  while (kept.at(-1) === '') kept.pop()
  const whole = kept.length === 0 ? '' : kept.join(lineEnd) + lineEnd
  return sameCuts(whole, laid) ? whole : text
}

export interface LaidOut {
  /** One for each of its lines. */
  readonly lines: readonly string[]
  /** It reads as before, and laid out again it stays as it is. */
  readonly rests: boolean
}

export const laidOut = memoizeByIdentity((section: { readonly text: string }): LaidOut => {
  const text = section.text.replace(/^\uFEFF/, '')
  const lines = layOut(text)
  const again = lines.map((line) => `${line}\n`).join('')
  const rests = again === text || (reading(again) === reading(text) && same(layOut(again), lines))
  return { lines, rests }
})

/** The versions of a merge conflict are left as they were written, to be compared. */
const layOut = (text: string): readonly string[] =>
  conflictsIn(text).length > 0 ? linesOf(text) : linesLaidOut(text)

const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((line, i) => line === b[i])

/** Whether the text laid out is cut where it was cut before: blank lines apart, each piece has the lines of one section. */
function sameCuts(whole: string, laid: readonly LaidOut[]): boolean {
  const nonEmptyLines = (lines: readonly string[]) => lines.filter((line) => line !== '').join('\n')
  const before = laid.map(({ lines }) => nonEmptyLines(lines)).filter((piece) => piece !== '')
  const after = cutSections(whole).map((piece) => nonEmptyLines(piece.split(/\r\n|[\n\r]/)))
  return same(
    after.filter((piece) => piece !== ''),
    before,
  )
}

/** What the parser gets for a section: its tokens, and where braces are missing. */
const reading = (section: string): string =>
  JSON.stringify(
    balanced(T.lex(section).tokens, section)
      .tokens.filter(({ tokenType }) => tokenType !== T.Newline)
      .map(({ tokenType, image }) => [tokenType.name, image.trimEnd()]),
  )

interface Line {
  readonly depth: number
  /** The line itself, when it is not a fact that lines up with its neighbours. */
  readonly whole?: string
  readonly name?: string
  readonly value?: string
  readonly provenance?: string
  readonly comment: string
}

function linesLaidOut(section: string): string[] {
  const nesting = new Nesting()
  const lines = linesOf(section).map((text): Line => {
    const { tokens, trivia } = T.lex(text)
    const at = nesting.next(tokens)
    const comment = trivia.find((t) => t.tokenType === T.Comment)?.image.trimEnd() ?? ''
    return { depth: at, ...fact(tokens, text), comment }
  })
  const columns = columnsOf(lines)
  return lines.map((line, i) => written(line, columns[i] ?? { names: 0, values: 0 }))
}

/** Counts braces, line by line. */
class Nesting {
  #depth = 0

  /** How deep a line stands: braces that begin it close what is above. */
  next(tokens: readonly IToken[]): number {
    const closing = tokens.findIndex((token) => token.tokenType !== T.Closing)
    const at = Math.max(0, this.#depth - (closing === -1 ? tokens.length : closing))
    for (const token of tokens) {
      if (token.image === '{' && isBrace(token)) this.#depth += 1
      else if (token.image === '}' && isBrace(token)) this.#depth = Math.max(0, this.#depth - 1)
    }
    return at
  }
}

/** How each line of a section is indented, and last of all one that would follow. */
export function indentsOf(section: string): readonly string[] {
  const nesting = new Nesting()
  return [...linesOf(section), ''].map((line) => indent(nesting.next(T.lex(line).tokens)))
}

const indent = (depth: number): string => '  '.repeat(Math.min(depth, T.deepest))

/** What follows the last line end belongs to the next section. */
export function linesOf(section: string): readonly string[] {
  const ends = T.lex(section).tokens.filter(({ tokenType }) => tokenType === T.Newline)
  const starts = [0, ...ends.map(T.endOf)]
  const lines = starts.map((start, i) => section.slice(start, ends[i]?.startOffset))
  return lines.at(-1) === '' ? lines.slice(0, -1) : lines
}

const isBrace = ({ tokenType }: IToken): boolean =>
  tokenType === T.Opening || tokenType === T.Closing || tokenType === T.TooDeep

/** A line that is one fact is taken apart, so that it can line up; any other is spaced as a whole. */
function fact(tokens: readonly IToken[], text: string): Omit<Line, 'depth' | 'comment'> {
  const [name, colon, ...rest] = tokens
  const alone = !rest.some((t) => t.tokenType === T.FactName || isBrace(t))
  if (!colon || name?.tokenType !== T.FactName || !alone) return { whole: spaced(tokens, text) }
  const open =
    rest.at(-1)?.tokenType === T.RightBracket ? rest.findLastIndex((t) => t.tokenType === T.LeftBracket) : -1
  const value = spaced(open < 0 ? rest : rest.slice(0, open), text)
  const provenance = open < 0 ? undefined : spaced(rest.slice(open), text)
  const joined = `${name.image}: ${value}${provenance === undefined ? '' : ` ${provenance}`}`
  if (!sameReading(tokens, joined)) return { whole: asItStands(tokens, text) }
  return { name: name.image, value, ...(provenance !== undefined && { provenance }) }
}

const sameReading = (tokens: readonly IToken[], text: string): boolean => {
  const again = T.lex(text).tokens
  return (
    again.length === tokens.length &&
    again.every((t, i) => t.tokenType === tokens[i]?.tokenType && t.image === tokens[i]?.image)
  )
}

const asItStands = (tokens: readonly IToken[], text: string): string => {
  const [first, last] = [tokens[0], tokens.at(-1)]
  return first && last ? text.slice(first.startOffset, T.endOf(last)) : ''
}

/** The tokens with the spaces they should have between them. */
function spaced(tokens: readonly IToken[], text: string): string {
  const joined = tokens.map((token, i) => gap(tokens[i - 1], token, tokens[i - 2]) + token.image).join('')
  return sameReading(tokens, joined) ? joined : asItStands(tokens, text)
}

function gap(before: IToken | undefined, token: IToken, further: IToken | undefined): string {
  if (!before) return ''
  const touching = T.endOf(before) === token.startOffset
  const [left, right] = [before.tokenType, token.tokenType]
  if (left === T.Opening || left === T.Closing || right === T.Opening || right === T.Closing) return ' '
  // `ratio: 2.5:1`
  if (right === T.Colon && (left === T.FactName || left === T.Amount)) return ''
  if (left === T.Colon) return further?.tokenType === T.Amount && right === T.Amount ? '' : ' '
  if (right === T.FactName || right === T.BlockKind) return '  '
  if (right === T.Comma) return ''
  if (left === T.Comma) return ' '
  if ((left === T.Amount || left === T.Blank) && right === T.Word) return ' '
  return touching ? '' : ' '
}

/** Widths of the name and the value column, for each line of a run of facts without anything between them. */
function columnsOf(lines: readonly Line[]): readonly Columns[] {
  const all: Columns[] = []
  let columns: { names: number; values: number } = { names: 0, values: 0 }
  lines.forEach((line, i) => {
    const above = lines[i - 1]
    if (above?.name === undefined || above.depth !== line.depth) columns = { names: 0, values: 0 }
    columns.names = Math.max(columns.names, line.name?.length ?? 0)
    if (line.provenance !== undefined) columns.values = Math.max(columns.values, line.value?.length ?? 0)
    all.push(columns)
  })
  return all
}

interface Columns {
  readonly names: number
  readonly values: number
}

function written(line: Line, { names, values }: Columns): string {
  const margin = indent(line.depth)
  const behind = (code: string) => [code, line.comment].filter(Boolean).join('  ')
  if (line.name === undefined) {
    const code = behind(line.whole ?? '')
    return code === '' ? '' : margin + code
  }
  const start = `${line.name}:`.padEnd(names + 2) + (line.value ?? '')
  const code =
    line.provenance === undefined
      ? start.trimEnd()
      : `${start.padEnd(names + 2 + values)}   ${line.provenance}`
  return margin + behind(code)
}
