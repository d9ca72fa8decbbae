import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import { type Document, positionOf } from '../../job/document.ts'
import type { Section } from '../../job/model.ts'
import { tokenModifiers, tokenTypes } from './semantic-legend.ts'
import { type SemanticToken, semanticTokens } from './semantic-tokens.ts'

/** Numbers a token: lines and characters from the one before, length, type, modifiers (LSP 3.17, SemanticTokens). */
const size = 5

interface Encoded {
  readonly data: readonly number[]
  readonly lastLine: number
}

/** A section's tokens, the first of them counted from where the section begins. */
const encoded = memoizeByIdentity((section: Section): Encoded => encode(semanticTokens(section)))

function encode(tokens: readonly SemanticToken[]): Encoded {
  const data: number[] = []
  let [line, character] = [0, 0]
  for (const token of tokens) {
    if (token.line > line) character = 0
    const bits = token.modifier ? 1 << tokenModifiers.indexOf(token.modifier) : 0
    data.push(
      token.line - line,
      token.character - character,
      token.length,
      tokenTypes.indexOf(token.type),
      bits,
    )
    ;({ line, character } = token)
  }
  return { data, lastLine: line }
}

/** The tokens of a text as the protocol has them. */
export const encodedTokens = memoizeByIdentity((document: Document): readonly number[] => {
  const data: number[] = []
  let before = 0 // line of the token before
  for (const section of document.sections) {
    const of = encoded(section)
    if (of.data.length === 0) continue
    const line = positionOf(document, section, 0).line
    const first = data.length
    for (const number of of.data) data.push(number)
    data[first] = line + (of.data[0] ?? 0) - before
    before = line + of.lastLine
  }
  return data
})

/** The same of some lines, both included. */
export function encodedTokensIn(document: Document, from: number, to: number): readonly number[] {
  const found: SemanticToken[] = []
  for (const section of document.sections) {
    const first = positionOf(document, section, 0).line
    if (first > to) break
    if (positionOf(document, section, section.text.length).line < from) continue
    for (const token of semanticTokens(section)) {
      const line = first + token.line
      if (line >= from && line <= to) found.push({ ...token, line })
    }
  }
  return encode(found).data
}

export interface TokenEdit {
  readonly start: number
  readonly deleteCount: number
  readonly data: readonly number[]
}

/** What turns the one into the other: nothing, or one edit of whole tokens. */
export function tokenEdits(before: readonly number[], after: readonly number[]): readonly TokenEdit[] {
  const shorter = Math.min(before.length, after.length)
  let head = 0
  while (head < shorter && before[head] === after[head]) head += 1
  head -= head % size
  let tail = 0
  while (tail < shorter - head && before[before.length - 1 - tail] === after[after.length - 1 - tail])
    tail += 1
  tail -= tail % size
  const deleteCount = before.length - tail - head
  const data = after.slice(head, after.length - tail)
  return deleteCount === 0 && data.length === 0 ? [] : [{ start: head, deleteCount, data }]
}
