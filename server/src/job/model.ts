import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { BlockNode, FactNode, Parsed, SectionTree, Span } from '../syntax/tree.ts'
import type { FactPath, FactValue } from '../vocabulary/index.ts'
import type { ValueProblem } from '../vocabulary/reader.ts'
import type { Status } from '../vocabulary/status.ts'
import type { Refusal } from './file-text.ts'

/** A top-level block's text with its tree. Its identity is the key of everything worked out from it. */
export interface Section {
  readonly text: string
  readonly parsed: Parsed<SectionTree>
}

/** Somewhere in a text, wherever the section stands in its file now. */
export interface Place {
  readonly section: Section
  readonly span: Span
  /** What belongs here but is written elsewhere, where a drive is `like` another. */
  readonly taken?: Taken | undefined
}

/** A block that a drive takes from the one it is `like`, or a fact of it. */
export interface Taken {
  /** The block in the drive that takes it: `starboard.coupling`. */
  readonly path: string
  /** Name of the fact. */
  readonly fact?: string
  /** The block of the other drive that says it: `port.coupling`. */
  readonly of: string
  /** Where it is written: in the other drive. */
  readonly from: Place
}

/** A fact's value with where it stands and where it comes from. */
export interface Value<T> {
  readonly value: T
  /** Where the value is written. When inherited, where the block says what it is `like`; taken by the drive, the heading of the block. */
  readonly at: Place
  /** Where an inherited value is written. */
  readonly origin?: Place | undefined
  readonly name: string
  readonly provenance?: { readonly words: readonly string[]; readonly texts: readonly string[] }
  readonly node: FactNode
  /** It is worked out from a value that is marked as assumed. */
  readonly assumes?: true
  /** Where a part of a list is written, where the value does not say. */
  readonly partAt?: (index: number) => Place
}

/** Where a part of a list is written. */
export function placeOfPart(of: Value<readonly unknown[]>, index: number): Place {
  if (of.partAt) return of.partAt(index)
  const { section, span } = of.origin ?? of.at
  const parts = of.value as readonly ({ readonly span?: Span } | undefined)[]
  return { section, span: parts[index]?.span ?? span }
}

/** Whether a value is marked as assumed, or worked out from one that is. */
export const isAssumed = ({ provenance, assumes }: Value<unknown>): boolean =>
  assumes === true || provenance?.words.includes('assumed') === true

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
  /** Those of them that are not known yet: a `?` stands in their value, or nothing. */
  readonly blanks: ReadonlySet<string>
  readonly section: Section
  /** It says what it is like, and that cannot be followed. */
  readonly likeUnknown: boolean
  /** Facts and blocks that what it is `like` says and it does not take: by name, with where they are said. */
  readonly left: ReadonlyMap<string, Place>
  /** Its text. A block taken whole has none in its drive: its node is empty and stands at the word behind `like`. */
  readonly node: BlockNode
  /** Its heading, where findings about it stand. For a block taken whole that is the word behind the drive's `like`. */
  readonly head: Place
  /** The block of the other drive that it takes from, where its drive is `like` another. */
  readonly source: Block | undefined
  /** Whether nothing of it is written in its own drive; absent: its heading shows it. */
  readonly isTakenWhole?: boolean
}

/** Whether nothing of a block is written in its own drive. */
export const isTakenWhole = ({ head, isTakenWhole: isWhole }: Block): boolean =>
  isWhole ?? head.taken !== undefined

/** The block itself, or where nothing of it is written in its drive, the one that it is taken from. */
export function writtenBlock(block: Block): Block {
  let written = block
  while (written.source && isTakenWhole(written)) written = written.source
  return written
}

/** Whether a place belongs to a block: lies in its text, or is of what it or a block inside it takes. */
export function isWithin(place: Place, block: Block): boolean {
  if (place.taken) {
    const { path } = place.taken
    if (path === block.path || path.startsWith(`${block.path}.`)) return true
  }
  if (place.section !== block.section || isTakenWhole(block)) return false
  return block.node.span.start <= place.span.start && place.span.end <= block.node.span.end
}

/** How a section came to a block of another: by the name of the top-level block, or as the only one of its kind outside the section; then inwards. It
 * leads to the same block when that is bound again. */
export interface Way {
  readonly from: { readonly name: string } | { readonly kind: string; readonly outside: Section }
  readonly inside: readonly number[]
}

/** A word that stands for a block, or for a fact of one, as binding finds it. */
export interface Mention {
  readonly at: Place
  /** A block of the section itself or of one that it takes from, or the way to that of another. */
  readonly to: Block | Way
  readonly fact?: string
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

/** One way to read an amount that can be read several ways. */
export interface Meaning {
  /** The amount, written so that it means just this. */
  readonly write: string
  /** What it comes to, `15 kW`, where that is known and not what is written. */
  readonly comesTo?: string
  /** The fact cannot be that. */
  readonly isOutside?: true
}

/** What a drive, or a part of it, has to say itself. */
export interface NotTaken {
  /** `propeller.turns`, `phase-map`. */
  readonly path: string
  /** From which status on it is asked for. */
  readonly from: Status | undefined
  /** Where the other drive says it. */
  readonly at: Place
}

/** What binding found wrong, as data. */
export type BindingProblem =
  | ValueProblem
  /** `path`: of a file that is used; else it is the file itself. */
  | (Refusal & { readonly path?: string })
  /** `now`: what its line is written as since the language changed. */
  | {
      readonly type: 'unknown-fact'
      readonly name: string
      readonly kind: string
      readonly nearest?: string
      readonly now?: string
    }
  | { readonly type: 'unknown-block'; readonly kind: string; readonly nearest?: string }
  | { readonly type: 'misplaced-block'; readonly kind: string; readonly within: readonly string[] }
  | {
      readonly type: 'duplicate'
      readonly what: string
      readonly first: Place
      /** `what` is a kind of block of which there may be one. */
      readonly isKind?: true
    }
  | { readonly type: 'heading'; readonly kind: string; readonly expected: string }
  | { readonly type: 'line-not-understood' }
  /** A record of what was done says that it is `like` another. */
  | { readonly type: 'record-like'; readonly kind: string }
  /** `meant`: the amount as it should be written. */
  | { readonly type: 'decimal-comma'; readonly meant: string }
  | { readonly type: 'thousands-separator'; readonly meant: string }
  | { readonly type: 'comma-unclear'; readonly meanings: readonly Meaning[] }
  /** `15.000 W`: what it is read as, and what it would be if the point parted thousands. */
  | { readonly type: 'point-unclear'; readonly read: Meaning; readonly thousands: Meaning }
  /** `meant`: the value without its quotes. */
  | { readonly type: 'value-quoted'; readonly meant: string }
  | { readonly type: 'sign-touches' }
  /** A dash where a minus or a hyphen was meant. */
  | { readonly type: 'dash' }
  /** `2.5-1` */
  | { readonly type: 'minus-touches' }
  /** Facts of the block referred to that are written there but could not be read. */
  | { readonly type: 'source-unread'; readonly path: string; readonly names: readonly string[] }
  | { readonly type: 'chain-too-long'; readonly path: string }
  | { readonly type: 'drive-too-large'; readonly path: string; readonly count: number; readonly most: number }
  /** A drive that is `like` another has a block beside those of the kind that it takes. */
  | {
      readonly type: 'block-added'
      readonly kind: string
      readonly name: string | undefined
      readonly taken: readonly string[]
      /** Blocks of the kind go by name. */
      readonly isNamed: boolean
    }
  /** What a drive or a part does not take from the one it is `like`, and does not say itself: facts and blocks, named from it down. */
  | {
      readonly type: 'not-taken'
      readonly from: string
      readonly missing: readonly NotTaken[]
      readonly status: Status | undefined
    }
  | { readonly type: 'use-outside'; readonly path: string }
  | { readonly type: 'use-missing'; readonly path: string }
  | { readonly type: 'use-loop'; readonly path: string }

/** The value of a fact, typed by its path: `factOf(block, 'seal.free-length')`. Undefined when the block is of another kind or silent. */
export function factOf<P extends FactPath>(block: Block, path: P): Value<FactValue<P>> | undefined {
  const dot = path.indexOf('.')
  if (block.kind !== path.slice(0, dot)) return undefined
  return block.facts.get(path.slice(dot + 1)) as Value<FactValue<P>> | undefined
}

/** The word a block goes by where it is written: its name, or where it has none its kind. */
export function headingOf(block: Block): Place {
  const { section, node, name } = writtenBlock(block)
  const [first] = node.heading
  return { section, span: first?.type === 'word' && first.text === name ? first.span : node.kind.span }
}

/** The word that gives a block its name: in the other drive where it has it from there. Blocks with the same one are renamed together. */
export function nameOf(block: Block): Place {
  let first = writtenBlock(block)
  while (first.source && first.name !== undefined && first.name === first.source.name)
    first = writtenBlock(first.source)
  return headingOf(first)
}

/** The block that a part of the tree has become. */
export function blockOf(blocks: readonly Block[], node: BlockNode): Block | undefined {
  for (const block of blocks) {
    const found = block.node === node ? block : blockOf(block.children, node)
    if (found) return found
  }
  return undefined
}

interface Headed {
  readonly kind: string
  readonly name: string | undefined
}

const byKind = memoizeByIdentity((blocks: readonly Headed[]): ReadonlyMap<string, readonly Headed[]> => {
  const sorted = new Map<string, Headed[]>()
  for (const block of blocks) {
    const same = sorted.get(block.kind)
    if (same) same.push(block)
    else sorted.set(block.kind, [block])
  }
  return sorted
})

/** The blocks of a kind, sorted out once for a list of blocks. */
export const ofKind = <B extends Headed>(blocks: readonly B[], kind: string): readonly B[] =>
  (byKind(blocks).get(kind) ?? []) as readonly B[]

const byName = memoizeByIdentity((blocks: readonly Headed[]): ReadonlyMap<string, readonly Headed[]> => {
  const sorted = new Map<string, Headed[]>()
  for (const block of blocks) {
    if (block.name === undefined) continue
    const same = sorted.get(block.name)
    if (same) same.push(block)
    else sorted.set(block.name, [block])
  }
  return sorted
})

/** The blocks of a name, sorted out once for a list of blocks. */
export const ofName = <B extends Headed>(blocks: readonly B[], name: string): readonly B[] =>
  (byName(blocks).get(name) ?? []) as readonly B[]

export const childrenOf = (block: Block, kind: string): readonly Block[] => ofKind(block.children, kind)

/** The first block of a name counts. */
export const blockNamed = <B extends Headed>(blocks: readonly B[] | undefined, name: string): B | undefined =>
  blocks && ofName(blocks, name)[0]
