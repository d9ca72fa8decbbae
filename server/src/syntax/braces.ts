import type { IToken } from 'chevrotain'
import { join, spanOf } from './leaves.ts'
import { BlockKind, Closing, endOf, FactName, Newline, Opening, Text, Word } from './tokens.ts'
import type { Item, Leaf, Part, Span, SyntaxProblem } from './tree.ts'

export interface Balanced {
  /** What the parser reads: a brace that is missing is there as a token without text, one too many is not. */
  readonly tokens: IToken[]
  /** Closing braces that belong to no block. */
  readonly extra: readonly Span[]
}

/** Where a brace is missing or too many, the indentation of the lines shows where. A section whose braces are even stays as it is. */
export function balanced(tokens: IToken[], text: string): Balanced {
  let openings = 0
  let closings = 0
  for (const { tokenType } of tokens) {
    if (tokenType === Opening) openings += 1
    else if (tokenType === Closing) closings += 1
  }
  if (openings === closings) return { tokens, extra: [] }
  const lines = linesOf(tokens, text)
  const opened = closings > openings ? withOpenings(lines, closings - openings) : 0
  return withClosings(lines, closings - openings - opened)
}

/** Whether a token stands for a brace that is not in the text. */
const isMissing = ({ image }: IToken): boolean => image === ''

/** `foot aft-port`: kind and heading, without the brace. */
export const blockHeading = (kind: IToken, heading: readonly Part[]): Leaf => ({
  text: [kind.image, ...heading.flatMap((part) => ('text' in part ? [part.text] : []))].join(' '),
  span: join(spanOf(kind), heading.at(-1)?.span ?? spanOf(kind)),
})

/** What is wrong with the braces of a block, at the place where one is missing. */
export function braceProblems(
  heading: Leaf,
  block: { readonly opening: IToken; readonly closing: IToken | undefined; readonly last: Item | undefined },
): SyntaxProblem[] {
  const problems: SyntaxProblem[] = []
  const { opening, closing, last } = block
  if (isMissing(opening)) problems.push({ type: 'block-not-opened', heading, span: heading.span })
  if (closing && !isMissing(closing)) return problems
  const { start, end } = last?.span ?? heading.span
  const span = { start: last?.type === 'block' ? end - 1 : start, end }
  return [...problems, { type: 'block-not-closed', heading, span }]
}

interface Line {
  readonly indent: number
  tokens: IToken[]
}

/** Lines with something on them, each with its line end. */
function linesOf(tokens: readonly IToken[], text: string): Line[] {
  const lines: Line[] = []
  let line: IToken[] = []
  const end = () => {
    const [first] = line
    if (!first) return
    // Not by `lastIndexOf`: of two kinds of line end one is rare, and would be looked for in all of the text.
    let start = first.startOffset
    while (start > 0 && text[start - 1] !== '\n' && text[start - 1] !== '\r') start -= 1
    const before = text.slice(start, first.startOffset)
    lines.push({ indent: before.trim() === '' ? before.replaceAll('\t', '  ').length : 0, tokens: line })
    line = []
  }
  for (const token of tokens) {
    if (token.tokenType === Newline && line.length === 0) {
      lines.at(-1)?.tokens.push(token)
      continue
    }
    line.push(token)
    if (token.tokenType === Newline) end()
  }
  end()
  return lines
}

const missing = (type: typeof Opening, after: IToken): IToken => ({
  ...after,
  image: '',
  startOffset: endOf(after),
  tokenType: type,
  tokenTypeIdx: type.tokenTypeIdx as number,
})

/** Puts the opening brace where a heading has none, at most so often; gives how often. */
function withOpenings(lines: readonly Line[], most: number): number {
  let count = 0
  lines.forEach((line, i) => {
    const { tokens, indent } = line
    const [first] = tokens
    if (count === most || first?.tokenType !== Word) return
    const isHeading = ({ tokenType }: IToken) => tokenType === Word || tokenType === Text
    const words = tokens.findIndex((token) => !isHeading(token))
    const rest = tokens.slice(words)
    const isAlone = rest[0]?.tokenType === Newline
    const opensBelow = isAlone && words <= 3 && (lines[i + 1]?.indent ?? 0) > indent
    const closesHere = !isAlone && words > 0 && depthOf(rest) < 0
    if (!opensBelow && !closesHere) return
    const heading = opensBelow || rest[0]?.tokenType === FactName ? words : 1
    const last = tokens[heading - 1]
    if (!last) return
    first.tokenType = BlockKind
    first.tokenTypeIdx = BlockKind.tokenTypeIdx as number
    line.tokens = tokens.toSpliced(heading, 0, missing(Opening, last))
    count += 1
  })
  return count
}

/** Blocks opened less those closed. */
const depthOf = (tokens: readonly IToken[]): number =>
  tokens.reduce(
    (depth, { tokenType }) => depth + Number(tokenType === Opening) - Number(tokenType === Closing),
    0,
  )

interface Open {
  readonly indent: number
  readonly line: number
  /** Whether something of it stands on its first line, or further in. */
  hasOwn: boolean
}

/** Puts a closing brace where a line is further out than the block it would be in, and leaves out those that close nothing. */
function withClosings(lines: readonly Line[], excess: number): Balanced {
  const read: IToken[] = []
  const extra: Span[] = []
  const open: Open[] = []
  let left = excess
  const close = () => {
    const at = read.findLastIndex(({ tokenType }) => tokenType !== Newline)
    const last = read[at]
    if (last) read.splice(at + 1, 0, missing(Closing, last))
    open.pop()
  }
  lines.forEach(({ tokens, indent }, i) => {
    const [first] = tokens
    const closes = first?.tokenType === Closing
    if (closes && open.some((block) => block.indent === indent))
      while ((open.at(-1)?.indent ?? indent) > indent) close()
    // The first block of a section ends where the section does: what is inside it at the margin was put there.
    if (!closes)
      while (open.length > 1 && open.at(-1)?.hasOwn && (open.at(-1)?.indent ?? 0) >= indent) close()
    for (const block of open) if (indent > block.indent) block.hasOwn = true
    tokens.forEach((token) => {
      const top = open.at(-1)
      if (token.tokenType === Opening) open.push({ indent, line: i, hasOwn: false })
      else if (token.tokenType === Closing) {
        const isOdd = top && (token === first ? top.indent < indent : top.line !== i)
        if (left > 0 && isOdd) {
          left -= 1
          extra.push(spanOf(token))
          return
        }
        if (!top) left -= 1
        open.pop()
      } else if (top?.line === i && token.tokenType !== Newline) top.hasOwn = true
      read.push(token)
    })
  })
  return { tokens: read, extra }
}
