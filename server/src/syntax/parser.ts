import { EOF, type IToken } from 'chevrotain'
import { balanced } from './braces.ts'
import { conflictsIn } from './conflicts.ts'
import { withDocs } from './doc-comments.ts'
import { SectionParser } from './grammar.ts'
import { spanOf } from './leaves.ts'
import { lex } from './tokens.ts'
import type { Parsed, SectionTree } from './tree.ts'

let built: SectionParser | undefined

/** Builds the parser with the grammar's own validations on, as the tests do once. */
export const validateGrammar = (): void => void new SectionParser(true)

/** Reads one section. Never throws: what cannot be read is among the problems. */
export function parseSection(text: string): Parsed<SectionTree> {
  built ??= new SectionParser(false)
  const parser = built
  const { tokens, trivia } = lex(text)
  const { tokens: read, extra } = balanced(tokens, text)
  parser.input = read
  parser.problems = conflictsIn(text).map(({ opening }) => ({
    type: 'merge-conflict',
    // Without its line end.
    span: {
      start: opening.start,
      end: opening.start + text.slice(opening.start, opening.end).trimEnd().length,
    },
  }))
  for (const span of extra) parser.problems.push({ type: 'closing-without-block', span })
  const items = parser.section() ?? []
  const failure = parser.errors[0]
  if (failure) {
    const token = failure.token.tokenType === EOF ? tokens.at(-1) : failure.token
    parser.problems.push({
      type: 'unreadable',
      text: token?.image ?? '',
      span: token ? spanOf(token) : { start: 0, end: 0 },
    })
  }
  const all = merge(tokens, trivia)
  return { tree: { items: withDocs(items, trivia, text), tokens: all }, problems: parser.problems }
}

function merge(tokens: readonly IToken[], trivia: readonly IToken[]): IToken[] {
  const all: IToken[] = []
  let t = 0
  for (const token of tokens) {
    for (let next = trivia[t]; next && next.startOffset < token.startOffset; next = trivia[++t])
      all.push(next)
    all.push(token)
  }
  for (let next = trivia[t]; next; next = trivia[++t]) all.push(next)
  return all
}
