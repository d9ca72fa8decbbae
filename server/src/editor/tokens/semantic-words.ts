import { isUse } from '../../job/bind.ts'
import { findUnit } from '../../quantity/units.ts'
import { segmentsOf } from '../../syntax/segments.ts'
import {
  type BlockNode,
  type Entry,
  type FactNode,
  type Item,
  insideOf,
  type Leaf,
  type Part,
  type Span,
} from '../../syntax/tree.ts'
import type { BlockKind, Fact } from '../../vocabulary/block.ts'
import type { Slot } from '../../vocabulary/form.ts'
import { findKind } from '../../vocabulary/index.ts'
import type { TokenType } from './semantic-legend.ts'

/** What a word is: of a path, segment by segment. */
export interface TypedWord {
  readonly span: Span
  readonly type: TokenType
  /** Set where it gives a name to something. */
  readonly declares?: true
}

/** What the words of a section's tree are, as far as it and the vocabulary tell, by where they stand. */
export function wordsOf(items: readonly Item[], text: string): ReadonlyMap<number, readonly TypedWord[]> {
  const found = new Map<number, readonly TypedWord[]>()
  const put = ({ span }: { readonly span: Span }, type: TokenType, declares?: true): void =>
    void found.set(span.start, [{ span, type, ...(declares && { declares }) }])
  const path = (leaf: Leaf, last: TokenType): void => {
    const spans = segmentsOf(leaf, text)
    const meant = spans.map(
      (span, i): TypedWord => ({ span, type: i === spans.length - 1 ? last : 'variable' }),
    )
    found.set(spans[0]?.start ?? leaf.span.start, meant)
  }
  for (const item of items) inItem(item, undefined, { put, path })
  return found
}

interface TokenSink {
  readonly put: (leaf: { readonly span: Span }, type: TokenType, declares?: true) => void
  /** Blocks named one inside the other; the last may be a fact. */
  readonly path: (leaf: Leaf, last: TokenType) => void
}

function inItem(item: Item, kind: BlockKind | undefined, into: TokenSink): void {
  if (item.type === 'block') {
    inBlock(item, into)
    return
  }
  for (const word of item.provenance?.words ?? []) into.put(word, 'decorator')
  const [first] = item.entries[0]?.parts ?? []
  if (item.type === 'fact') inFact(item, kind, into)
  else if (!kind && isUse(item) && first) into.put(first, 'keyword')
  else inEntries(item.entries, kind?.bare === undefined ? undefined : kind.facts[kind.bare], into)
}

function inBlock(block: BlockNode, into: TokenSink): void {
  const kind = findKind(block.kind.text)
  if (kind) into.put(block.kind, 'class')
  const [first, second] = block.heading.filter((part) => part.type === 'word')
  if (kind?.heading === 'after') {
    if (first?.text === 'after') into.put(first, 'keyword')
    if (second) into.path(second, 'variable')
  } else if (first) into.put(first, 'variable', kind?.heading === 'check' ? undefined : true)
  for (const item of block.items) inItem(item, kind, into)
}

function inFact({ name, entries }: FactNode, kind: BlockKind | undefined, into: TokenSink): void {
  const own = kind && Object.hasOwn(kind.facts, name.text) ? kind.facts[name.text] : undefined
  if (name.text === 'like') {
    into.put(name, 'keyword')
    for (const part of entries.flatMap((entry) => entry.parts))
      if (part.type === 'word') into.path(part, 'variable')
    return
  }
  // A name of the user's own is that of a block somewhere: a foot that is moved.
  into.put(name, !own && kind?.others ? 'variable' : 'property')
  inEntries(entries, own ?? kind?.others, into)
}

function inEntries(entries: readonly Entry[], fact: Fact | undefined, into: TokenSink): void {
  for (const part of entries.flatMap((entry) => entry.parts)) inPart(part, fact, into)
}

function inPart(part: Part, fact: Fact | undefined, into: TokenSink): void {
  for (const inner of insideOf(part)) inPart(inner, fact, into)
  if ('unit' in part && part.unit) {
    if (findUnit(part.unit.text)) into.put(part.unit, 'type')
    else if (slotsOf(fact).some(({ behind }) => behind?.includes(part.unit?.text ?? '')))
      into.put(part.unit, 'keyword')
  }
  if (part.type !== 'word') return
  const type = typeOf(part.text, fact)
  if (type === 'property' || type === 'variable') into.path(part, type)
  else if (type) into.put(part, type)
}

const slotsOf = (fact: Fact | undefined): readonly Slot[] =>
  (fact?.shape.forms ?? []).flatMap(({ entries }) => entries.flat())

/** What a word in a value is; undefined where the vocabulary does not tell. */
function typeOf(word: string, fact: Fact | undefined): TokenType | undefined {
  if (!fact) return undefined
  const { shape } = fact
  const slots = slotsOf(fact)
  const choices = slots.map((slot) => slot.choices ?? [])
  // A word that can be no other belongs to the form: `max`, `to`.
  if (choices.some(([only, other]) => only === word && other === undefined)) return 'keyword'
  if (shape.choices?.includes(word) || choices.some((words) => words.includes(word))) return 'enumMember'
  if (shape.refersTo || slots.some((slot) => slot.terminalsOf)) return 'variable'
  if (shape.quantity && !shape.choices) return 'property'
  return shape.choices ? undefined : 'string'
}
