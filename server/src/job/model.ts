import { once } from '../syntax/once.ts'
import type { BlockNode, FactNode, Parsed, SectionTree, Span } from '../syntax/tree.ts'
import type { FactPath, FactValue } from '../vocabulary/index.ts'
import type { ValueProblem } from '../vocabulary/reader.ts'

/** A top-level block's text with its tree. Its identity is the key of everything worked out from it. */
export interface Section {
  readonly text: string
  readonly parsed: Parsed<SectionTree>
}

/** Somewhere in a text, wherever the section stands in its file now. */
export interface Place {
  readonly section: Section
  readonly span: Span
}

/** A fact's value with where it stands and where it comes from. */
export interface Value<T> {
  readonly value: T
  /** Where the value is written; where the block says what it is `like`, when inherited. */
  readonly at: Place
  /** Where an inherited value is written. */
  readonly origin?: Place
  readonly name: string
  readonly provenance?: { readonly words: readonly string[]; readonly texts: readonly string[] }
  readonly node: FactNode
}

export interface Block {
  readonly kind: string
  readonly name: string | undefined
  /** Text of the heading: a job's title. */
  readonly title: string | undefined
  /** What a move comes after, or the check a concession is about. */
  readonly about: { readonly text: string; readonly at: Place } | undefined
  /** Names from the drive down: `starboard.dry-2`. */
  readonly path: string
  readonly parent: Block | undefined
  readonly children: readonly Block[]
  /** Every fact that could be read, its own and those it is `like`. */
  readonly facts: ReadonlyMap<string, Value<unknown>>
  /** Facts by names of the user's own (the feet of a move). */
  readonly others: ReadonlyMap<string, Value<unknown>>
  /** Names of facts that are written but could not be read: silence about them is not absence. */
  readonly unread: ReadonlySet<string>
  readonly section: Section
  readonly node: BlockNode
}

/** A word that stands for a block, or for what a block says. In a path each segment is one. */
export interface Reference {
  readonly at: Place
  readonly to: Block
  /** The fact of that block, where it stands for one. */
  readonly fact?: string
  /** The word in that fact, where it stands for one: the mark of a terminal. */
  readonly word?: string
  /** The word that gives what is meant its name: where it is defined. */
  readonly named: Place
}

/** What binding found wrong, as data. */
export type BindingProblem =
  | ValueProblem
  | { readonly type: 'unknown-fact'; readonly name: string; readonly kind: string; readonly nearest?: string }
  | { readonly type: 'unknown-block'; readonly kind: string; readonly nearest?: string }
  | { readonly type: 'misplaced-block'; readonly kind: string; readonly within: readonly string[] }
  | { readonly type: 'fact-missing'; readonly kind: string; readonly name: string; readonly example: string }
  | { readonly type: 'block-missing'; readonly kind: string; readonly name: string }
  | { readonly type: 'value-empty'; readonly name: string; readonly words: string; readonly example: string }
  | { readonly type: 'duplicate'; readonly what: string; readonly first: Place }
  | { readonly type: 'heading'; readonly kind: string; readonly expected: string }
  | { readonly type: 'line-not-understood' }
  | { readonly type: 'decimal-comma'; readonly meant: string }
  | { readonly type: 'sign-touches' }
  /** Facts of the block referred to that are written there but could not be read. */
  | { readonly type: 'source-unread'; readonly path: string; readonly names: readonly string[] }
  | { readonly type: 'chain-too-long'; readonly path: string }
  | { readonly type: 'use-outside'; readonly path: string }
  | { readonly type: 'use-missing'; readonly path: string }
  | { readonly type: 'use-loop'; readonly path: string }

/** The value of a fact, typed by its path: `factOf(block, 'seal.free-length')`. Undefined when the block is of another kind or silent. */
export function factOf<P extends FactPath>(block: Block, path: P): Value<FactValue<P>> | undefined {
  const dot = path.indexOf('.')
  if (block.kind !== path.slice(0, dot)) return undefined
  return block.facts.get(path.slice(dot + 1)) as Value<FactValue<P>> | undefined
}

/** The word a block goes by: its name, or where it has none its kind. */
export function nameOf({ section, node, name }: Block): Place {
  const [first] = node.heading
  return { section, span: name !== undefined && first ? first.span : node.kind.span }
}

/** The block that a part of the tree has become. */
export function blockOf(blocks: readonly Block[], node: BlockNode): Block | undefined {
  for (const block of blocks) {
    const found = block.node === node ? block : blockOf(block.children, node)
    if (found) return found
  }
  return undefined
}

const byKind = once((blocks: readonly Block[]): ReadonlyMap<string, readonly Block[]> => {
  const sorted = new Map<string, Block[]>()
  for (const block of blocks) {
    const same = sorted.get(block.kind)
    if (same) same.push(block)
    else sorted.set(block.kind, [block])
  }
  return sorted
})

/** The blocks of a kind, sorted out once for a list of blocks. */
export const ofKind = (blocks: readonly Block[], kind: string): readonly Block[] =>
  byKind(blocks).get(kind) ?? []

export const childrenOf = (block: Block, kind: string): readonly Block[] => ofKind(block.children, kind)
