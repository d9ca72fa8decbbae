import type { IToken } from 'chevrotain'

/** Offsets into the text of the section (a top-level block with what stands before it), so that a section can move without a new tree. */
export interface Span {
  readonly start: number
  readonly end: number
}

/** A word or string as written; `text` is without quotes. */
export interface Leaf {
  readonly text: string
  readonly span: Span
}

export type Part =
  | { readonly type: 'amount'; readonly number: string; readonly unit: Leaf | undefined; readonly span: Span }
  /** `?`, `? mm`: not known yet. */
  | { readonly type: 'blank'; readonly unit: Leaf | undefined; readonly span: Span }
  | { readonly type: 'word'; readonly text: string; readonly span: Span }
  | { readonly type: 'text'; readonly text: string; readonly span: Span }
  | { readonly type: 'date'; readonly text: string; readonly span: Span }
  | {
      readonly type: 'two-sided'
      readonly text: string
      readonly unit: Leaf | undefined
      readonly span: Span
    }
  | { readonly type: 'plus-minus'; readonly by: Part; readonly span: Span }
  /** `2.5:1` */
  | { readonly type: 'proportion'; readonly left: Part; readonly right: Part; readonly span: Span }
  | { readonly type: 'range'; readonly low: Part; readonly high: Part; readonly span: Span }
  | {
      readonly type: 'operation'
      readonly operator: '+' | '-' | '*' | '/'
      readonly left: Part
      readonly right: Part
      readonly span: Span
    }
  | { readonly type: 'negated'; readonly of: Part; readonly span: Span }
  | { readonly type: 'missing'; readonly span: Span }

/** Parts between two commas. */
export interface Entry {
  readonly parts: readonly Part[]
  readonly span: Span
}

/** `[drawing "S-07"]`: where a value comes from. */
export interface Provenance {
  readonly words: readonly Leaf[]
  readonly texts: readonly Leaf[]
  readonly span: Span
}

export interface FactNode {
  readonly type: 'fact'
  readonly name: Leaf
  readonly entries: readonly Entry[]
  readonly provenance: Provenance | undefined
  readonly doc: string | undefined
  readonly span: Span
  readonly valueSpan: Span
}

/** A line without a colon: `use "parts.wright"`, `A to U, B to V`. */
export interface LineNode {
  readonly type: 'line'
  readonly entries: readonly Entry[]
  readonly provenance: Provenance | undefined
  readonly span: Span
}

export interface BlockNode {
  readonly type: 'block'
  readonly kind: Leaf
  /** What stands between the kind and the brace: a name, a title, a reference. */
  readonly heading: readonly Part[]
  readonly items: readonly Item[]
  readonly doc: string | undefined
  readonly span: Span
  /** Kind and heading, without the brace. */
  readonly headSpan: Span
}

export type Item = BlockNode | FactNode | LineNode

export type SyntaxProblem =
  /** At its last word; `heading` is that of the block. */
  | { readonly type: 'block-not-closed'; readonly heading: Leaf; readonly span: Span }
  /** At its heading. */
  | { readonly type: 'block-not-opened'; readonly heading: Leaf; readonly span: Span }
  | { readonly type: 'closing-without-block'; readonly span: Span }
  | { readonly type: 'text-not-closed'; readonly span: Span }
  | { readonly type: 'bracket-not-closed'; readonly closing: ']' | ')'; readonly span: Span }
  | { readonly type: 'curly-quotes'; readonly text: string; readonly span: Span }
  | { readonly type: 'unreadable'; readonly text: string; readonly span: Span }
  /** `(20 mm +3 mm)`: a sign that belongs to its number where one of a sum is wanted. */
  | { readonly type: 'sign-touches'; readonly span: Span }
  | { readonly type: 'value-missing'; readonly after: string; readonly span: Span }
  | { readonly type: 'too-deep'; readonly span: Span }
  | { readonly type: 'merge-conflict'; readonly span: Span }

/** Items of one section, and every token of its text: spaces and comments too, so that printing gives the text back. */
export interface SectionTree {
  readonly items: readonly Item[]
  readonly tokens: readonly IToken[]
}

export interface Parsed<T> {
  readonly tree: T
  readonly problems: readonly SyntaxProblem[]
}

/** The text the tree was read from. */
export const print = (tree: SectionTree): string => tree.tokens.map((token) => token.image).join('')

/** The parts that a part is made of. */
export function insideOf(part: Part): readonly Part[] {
  switch (part.type) {
    case 'plus-minus':
      return [part.by]
    case 'range':
      return [part.low, part.high]
    case 'operation':
    case 'proportion':
      return [part.left, part.right]
    case 'negated':
      return [part.of]
    default:
      return []
  }
}

/** A part, and all that it is made of. */
export const withInside = (part: Part): readonly Part[] => [part, ...insideOf(part).flatMap(withInside)]

const isOrHasBlank = (part: Part): boolean => part.type === 'blank' || insideOf(part).some(isOrHasBlank)

/** Whether the value is not known yet: nothing is written, or a part of it is blank. */
export const isBlank = (entries: readonly Entry[]): boolean =>
  entries.length === 0 || entries.some(({ parts }) => parts.some(isOrHasBlank))

export const contains = (span: Span, offset: number): boolean => span.start <= offset && offset <= span.end

/** Every block of the items, outer before inner. */
export function* blocksIn(items: readonly Item[]): Generator<BlockNode> {
  for (const item of items) {
    if (item.type !== 'block') continue
    yield item
    yield* blocksIn(item.items)
  }
}
