import type { IToken } from 'chevrotain'
import type { Section } from '../../job/model.ts'
import * as T from '../../syntax/tokens.ts'
import type { Span } from '../../syntax/tree.ts'
import { findKind } from '../../vocabulary/index.ts'
import { type Entries, entriesOf } from './cursor-entries.ts'

/** A block as its tokens show it, closed or not. */
export interface Frame {
  readonly kind: string
  /** Where its kind is written. */
  readonly start: number
  /** Where its brace is. */
  readonly opening: number
  /** Names of the facts in it, but not the one at the cursor. */
  readonly facts: readonly string[]
  /** Kinds of the blocks in it. */
  readonly blocks: readonly string[]
  /** Its lines without a name, each its tokens. */
  readonly lines: readonly (readonly IToken[])[]
}

/** Where a cursor stands, and what around it. */
export type CursorContext = Surroundings & CursorPosition

interface Surroundings {
  /** Outermost first. */
  readonly frames: readonly Frame[]
  /** What stands before the cursor, of what is to be replaced. */
  readonly word: string
  readonly replace: Span
  /** What follows what is to be replaced, spaces apart. */
  readonly next: 'colon' | 'brace' | undefined
}

type CursorPosition =
  /** Where a fact, a block or a line begins; `line`: what a line without a name would go on with. */
  | { readonly on: 'item'; readonly line: Entries }
  /** Between a block's kind and its brace. */
  | { readonly on: 'heading'; readonly kind: string; readonly words: readonly string[] }
  | ({ readonly on: 'value'; readonly fact: string } & Entries)
  /** In the brackets that say where a value comes from. */
  | { readonly on: 'provenance'; readonly words: readonly string[] }
  /** Behind `use`, in its quotes or before them. */
  | { readonly on: 'path'; readonly quoted: boolean }

const words: ReadonlySet<unknown> = new Set([T.Word, T.FactName, T.BlockKind])
const isWord = (token: IToken | undefined): token is IToken =>
  token !== undefined && words.has(token.tokenType)
const isTrivia = (token: IToken): boolean =>
  token.tokenType === T.Comment || (token.tokenType.GROUP as unknown) === 'trivia'
const isText = (token: IToken): boolean => token.tokenType === T.Text || token.tokenType === T.OpenText

/** What may be written at an offset, told from the tokens: they stand where the tree is broken too. Undefined where nothing has a meaning. */
export function cursorContext(section: Section, offset: number): CursorContext | undefined {
  const { tokens } = section.parsed.tree
  const left = leftOf(tokens, offset)
  const before = left < 0 ? undefined : tokens[left]
  const end = before ? T.endOf(before) : 0
  const inText = before !== undefined && isText(before) && (offset < end || before.tokenType === T.OpenText)
  if (before?.tokenType === T.Comment && offset <= end) return undefined
  const { replace, word } = inText ? quoted(section, before, offset) : wordAt(section, left, offset)
  const from = inText ? before.startOffset : replace.start
  const { frames, item } = around(tokens, from)
  const [first, ...rest] = item
  const base = { frames, word, replace, next: nextOf(tokens, replace.end) }
  if (first && isWord(first) && first.image === 'use' && frames.length === 0 && rest.length === 0)
    return { ...base, on: 'path', quoted: inText }
  if (inText) return undefined
  const frame = frames.at(-1)
  if (!first) return { ...base, on: 'item', line: entriesOf([], [], linesAround(frame, from, undefined)) }
  const bracket = item.findLastIndex(({ tokenType }) => tokenType === T.LeftBracket)
  const inside = item.slice(bracket + 1)
  const isShut = inside.some(({ tokenType }) => tokenType === T.RightBracket)
  if (bracket >= 0 && !isShut) return { ...base, on: 'provenance', words: inside.map(({ image }) => image) }
  if (item.some(({ tokenType }) => tokenType === T.RightBracket)) return undefined
  const behind = restOf(tokens, replace.end)
  if (first.tokenType === T.FactName)
    return rest.length === 0
      ? undefined
      : { ...base, on: 'value', fact: first.image, ...entriesOf(rest.slice(1), behind) }
  const bare = findKind(frame?.kind ?? '')?.bare
  if (bare !== undefined)
    return { ...base, on: 'value', fact: bare, ...entriesOf(item, behind, linesAround(frame, from, first)) }
  return isWord(first) && findKind(first.image)
    ? { ...base, on: 'heading', kind: first.image, words: rest.map(({ image }) => image) }
    : undefined
}

/** Index of the last token that begins before the offset. */
function leftOf(tokens: readonly IToken[], offset: number): number {
  let low = 0
  let high = tokens.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((tokens[middle]?.startOffset ?? 0) < offset) low = middle + 1
    else high = middle
  }
  return low - 1
}

function quoted(section: Section, token: IToken, offset: number): { replace: Span; word: string } {
  const start = token.startOffset + 1
  const end = Math.max(start, T.endOf(token) - (token.tokenType === T.Text ? 1 : 0))
  return { replace: { start, end: Math.max(end, offset) }, word: section.text.slice(start, offset) }
}

/** The word the cursor is in or behind; a date or a name that ends in a dot counts as one. */
function wordAt(section: Section, left: number, offset: number): { replace: Span; word: string } {
  const { tokens } = section.parsed.tree
  const span = (start: number, end: number) => ({
    replace: { start, end },
    word: section.text.slice(start, offset),
  })
  const token = tokens[left]
  const previous = tokens[left - 1]
  const touches = token !== undefined && T.endOf(token) >= offset
  if (touches && isWord(token)) return span(token.startOffset, T.endOf(token))
  if (touches && token.image === '.' && isWord(previous) && T.endOf(previous) === token.startOffset)
    return span(previous.startOffset, T.endOf(token))
  const date = /\d{4}-[\d-]*$/.exec(section.text.slice(Math.max(0, offset - 10), offset))
  if (date) {
    const more = /^[\d-]*/.exec(section.text.slice(offset, offset + 10))?.[0].length ?? 0
    return span(offset - date[0].length, offset + more)
  }
  return span(offset, offset)
}

/** The blocks that are still open where a section ends. */
export const framesAtEnd = (section: Section): readonly Frame[] =>
  around(section.parsed.tree.tokens, section.text.length).frames

interface Building extends Frame {
  readonly facts: string[]
  readonly blocks: string[]
  readonly lines: (readonly IToken[])[]
}

/** The blocks around an offset, and what of its own fact or line stands before it. */
function around(tokens: readonly IToken[], from: number): { frames: readonly Frame[]; item: IToken[] } {
  const stack: Building[] = []
  const top: Building = { kind: 'top', start: 0, opening: 0, facts: [], blocks: [], lines: [] }
  let frames: readonly Frame[] | undefined
  let before: IToken[] = []
  let item: IToken[] = []
  for (const token of tokens) {
    if (isTrivia(token)) continue
    if (!frames && token.startOffset >= from) {
      frames = [...stack]
      before = [...item]
    }
    const parent = stack.at(-1) ?? top
    const type = token.tokenType
    const begins = item[0]?.tokenType
    if ((type === T.Newline || type === T.Closing) && (begins === T.Word || begins === T.Text))
      parent.lines.push(item)
    if (type === T.Newline) item = []
    else if (type === T.Opening) {
      const [head] = item
      // A brace behind anything else opens nothing.
      if (head?.tokenType !== T.BlockKind) continue
      if (head.startOffset !== from) parent.blocks.push(head.image)
      const { image: kind, startOffset: start } = head
      stack.push({ kind, start, opening: token.startOffset, facts: [], blocks: [], lines: [] })
      item = []
    } else if (type === T.Closing) {
      stack.pop()
      item = []
    } else if (type === T.FactName) {
      if (token.startOffset !== from) parent.facts.push(token.image)
      item = [token]
    } else item.push(token)
  }
  return frames ? { frames, item: before } : { frames: stack, item }
}

/** The lines without a name before and behind the one at the cursor, which begins with `own` or at the cursor. */
function linesAround(frame: Frame | undefined, from: number, own: IToken | undefined) {
  const lines = frame?.lines ?? []
  const startOf = ([first]: readonly IToken[]) => first?.startOffset ?? 0
  return {
    above: lines.filter((line) => startOf(line) < from && line[0] !== own),
    below: lines.filter((line) => startOf(line) > from),
  }
}

function nextOf(tokens: readonly IToken[], from: number): 'colon' | 'brace' | undefined {
  for (let i = leftOf(tokens, from) + 1; i < tokens.length; i += 1) {
    const token = tokens[i]
    if (!token || isTrivia(token)) continue
    return token.tokenType === T.Colon ? 'colon' : token.tokenType === T.Opening ? 'brace' : undefined
  }
  return undefined
}

const ends: ReadonlySet<unknown> = new Set([T.Newline, T.Opening, T.Closing, T.FactName, T.LeftBracket])

/** What of a value stands behind an offset. */
function restOf(tokens: readonly IToken[], from: number): readonly IToken[] {
  const rest: IToken[] = []
  for (let i = leftOf(tokens, from) + 1; i < tokens.length; i += 1) {
    const token = tokens[i]
    if (!token || ends.has(token.tokenType)) break
    if (!isTrivia(token)) rest.push(token)
  }
  return rest
}
