import type { IToken } from 'chevrotain'
import * as T from '../../syntax/tokens.ts'

/** One part of a value as its tokens show it: `1.92 mm`, `top`, `± 0.02 mm`, `2 * 1.2 m`. */
export interface WrittenPart {
  readonly text: string
  readonly type: 'amount' | 'word' | 'other'
}

export interface Entries {
  /** Parts between commas, without the word at the cursor: before it and behind it. */
  readonly before: readonly (readonly WrittenPart[])[]
  readonly behind: readonly (readonly WrittenPart[])[]
  /** Which entry the cursor is in, and which part of it. */
  readonly entry: number
  readonly part: number
  /** The number just before, when it has no unit yet. */
  readonly number: string | undefined
  /** Whether something has to follow what stands before: `2 *`, `84..`, `±`. */
  readonly joined: boolean
}

const joiners: ReadonlySet<unknown> = new Set([
  T.Plus,
  T.Minus,
  T.Sign,
  T.Times,
  T.Over,
  T.To,
  T.PlusMinus,
  T.LeftParen,
])
const numbers: ReadonlySet<unknown> = new Set([T.Amount, T.Blank, T.TwoSided])
/** These begin a part, though more has to follow them. */
const heads: ReadonlySet<unknown> = new Set([T.PlusMinus, T.Sign])

type Lines = readonly (readonly IToken[])[]

/** The entries of a value, the tokens before the cursor's word and behind it apart; with the lines above and below that go on with it. */
export function entriesOf(
  before: readonly IToken[],
  behind: readonly IToken[],
  { above = [], below = [] }: { readonly above?: Lines; readonly below?: Lines } = {},
): Entries {
  const entries = [...above.flatMap(commas), ...commas(before)]
  const last = entries.at(-1) ?? []
  const token = last.at(-1)
  const joined = token !== undefined && joiners.has(token.tokenType)
  const number = token && numbers.has(token.tokenType) ? token.image : undefined
  const whole = parts(last).length
  return {
    before: entries.map(parts),
    behind: [...commas(behind), ...below.flatMap(commas)].map(parts),
    entry: entries.length - 1,
    part: joined ? Math.max(0, whole - 1) : whole,
    number,
    joined,
  }
}

function commas(tokens: readonly IToken[]): IToken[][] {
  const entries: IToken[][] = [[]]
  for (const token of tokens)
    if (token.tokenType === T.Comma) entries.push([])
    else entries.at(-1)?.push(token)
  return entries
}

function parts(tokens: readonly IToken[]): WrittenPart[] {
  const groups: IToken[][] = []
  for (const [i, token] of tokens.entries()) {
    const previous = tokens[i - 1]?.tokenType
    const isUnit = token.tokenType === T.Word && numbers.has(previous)
    const joins = joiners.has(token.tokenType) && !heads.has(token.tokenType)
    const last = groups.at(-1)
    if (last && (isUnit || joins || token.tokenType === T.RightParen || joiners.has(previous)))
      last.push(token)
    else groups.push([token])
  }
  return groups.map((group) => ({
    text: group.map(({ image }) => image).join(' '),
    type: group.some(({ tokenType }) => numbers.has(tokenType))
      ? 'amount'
      : group[0]?.tokenType === T.Word
        ? 'word'
        : 'other',
  }))
}
