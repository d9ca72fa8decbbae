import { getOrInsert } from '../common/get-or-insert.ts'
import type { Bound } from '../job/bind.ts'
import type { Block, Place, Section, Value } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import type { BlockNode } from '../syntax/tree.ts'
import { Anchor } from './anchor.ts'
import type { BlockId } from './block-id.ts'
import type { FileLookup, Lookup } from './lookup.ts'
import { type Facts, NotedMap } from './noted.ts'
import type { StoredValue } from './stored-value.ts'
import { ask, type Ended, type Notes, Question, type Source, type Trace } from './trace.ts'

/** Which top-level block there is. Its answer is its version too. */
export type RootQuestion = Question<StoredBlock | undefined> & Source

/** What holds the blocks of a file, and answers what goes beyond one of them. */
export interface Home {
  /** Another number whenever a file was taken in as it stands now. */
  readonly revision: number
  readonly fileLookup: FileLookup
  lookupOf(of: StoredBlock): Lookup
  readonly scope: Scope
  boundSection(section: Section): Bound
  stored(block: Block): StoredBlock
  blockOf(id: BlockId): StoredBlock
  /** The top-level block of a name. */
  named(name: string): RootQuestion
  /** The only top-level block of a kind. */
  only(kind: string): RootQuestion
  isTaken(name: string): Question<boolean>
  suppose<R>(of: StoredBlock, name: string, value: unknown, then: () => R): R
  /** Brings a trace up to date. */
  settle(trace: Trace, title: string): Ended
}

/** A top-level block with all inside it, as it stands now. */
export class Top implements Source {
  /** Another object whenever something that a block in it says is another. */
  version: object = {}
  /** Another object whenever it was bound anew: its text may have moved. */
  readonly text: { version: unknown } = { version: undefined }
  readonly blocks = new Map<BlockId, StoredBlock>()
  root: StoredBlock | undefined
  readonly home: Home
  readonly id: BlockId

  constructor(home: Home, id: BlockId) {
    this.home = home
    this.id = id
  }

  /** The block is gone. Who kept it, as the answer to a question, finds nothing in it. */
  remove(): void {
    for (const block of this.blocks.values()) block.content = undefined
    this.version = {}
    this.text.version = undefined
  }
}

/** What a block says. */
export interface Content {
  readonly block: Block
  readonly facts: Facts
  readonly others: Facts
  readonly unread: ReadonlySet<string>
  readonly blanks: ReadonlySet<string>
  readonly children: readonly StoredBlock[]
  readonly title: string | undefined
  readonly about: string | undefined
  readonly likeUnknown: boolean
  readonly isTakenWhole: boolean
  /** Names of what it does not take. */
  readonly left: ReadonlySet<string>
}

const nothing: ReadonlyMap<string, StoredValue> = new Map()
const noNames: ReadonlySet<string> = new Set()

/** What a block says in one respect. */
class Respect<K extends keyof Content> extends Question<Content[K] | undefined> {
  readonly #of: StoredBlock
  readonly #name: K

  constructor(of: StoredBlock, name: K) {
    super()
    this.#of = of
    this.#name = name
  }

  override answer(): Content[K] | undefined {
    return this.#of.content?.[this.#name]
  }

  override noteSources(notes: Notes): void {
    const { top } = this.#of
    // Where it is written is another answer whenever its section was bound anew.
    notes.from(this.#name === 'block' ? top.text : top)
  }
}

/** The block that goes by an id now. Once a block is gone, another may come to stand for its id. */
class ById extends Question<StoredBlock> {
  readonly #home: Home
  readonly #id: BlockId

  constructor({ top, key }: StoredBlock) {
    super()
    this.#home = top.home
    this.#id = key
  }

  override answer(): StoredBlock {
    return this.#home.blockOf(this.#id)
  }

  override noteSources(notes: Notes): void {
    notes.from(this.answer().top)
  }
}

/** The block that a block takes from, in another drive. */
class SourceOf extends Question<StoredBlock | undefined> {
  readonly #of: StoredBlock

  constructor(of: StoredBlock) {
    super()
    this.#of = of
  }

  override answer(): StoredBlock | undefined {
    const { content, top } = this.#of
    const source = content?.block.source
    return source && top.home.stored(source)
  }

  override noteSources(notes: Notes): void {
    const source = this.answer()
    notes.from(this.#of.top.text)
    if (source) notes.from(source.top)
  }
}

/** Where each of some names of what a block does not take is said. */
const placesLeft = (of: StoredBlock, names: ReadonlySet<string>): ReadonlyMap<string, Place> =>
  new Map([...names].map((name) => [name, new Anchor(() => of.bound.left.get(name) ?? of.bound.head)]))

/** A fact of a block, by its name. */
class FactNamed extends Question<StoredValue | undefined> {
  readonly #of: StoredBlock
  readonly #in: 'facts' | 'others'
  readonly #name: string

  constructor(of: StoredBlock, kind: 'facts' | 'others', name: string) {
    super()
    this.#of = of
    this.#in = kind
    this.#name = name
  }

  override answer(): StoredValue | undefined {
    return this.#of.content?.[this.#in].get(this.#name)
  }

  override noteSources(notes: Notes): void {
    notes.from(this.#of.top)
  }
}

/** A block by what it says. It stays the same object as long as a block of this kind and name is there. What is read of it is noted. */
export class StoredBlock implements Block {
  readonly top: Top
  readonly key: BlockId
  readonly kind: string
  readonly name: string | undefined
  readonly path: string
  readonly parent: StoredBlock | undefined
  readonly facts: ReadonlyMap<string, Value<unknown>>
  readonly others: ReadonlyMap<string, Value<unknown>>
  /** Not to be read but by questions. Undefined once the block is gone. */
  content: Content | undefined

  #aboutAt: Anchor | undefined
  #head: Anchor | undefined
  #respects: Map<keyof Content, Question> | undefined
  #lookup: Lookup | undefined
  #source: SourceOf | undefined
  #byId: ById | undefined
  /** Work on the block. */
  readonly traces = new Map<object, Trace>()

  constructor(top: Top, key: BlockId, { kind, name, path }: Block, parent: StoredBlock | undefined) {
    this.top = top
    this.key = key
    this.kind = kind
    this.name = name
    this.path = path
    this.parent = parent
    this.facts = new NotedMap(
      (fact) => new FactNamed(this, 'facts', fact),
      () => this.says('facts') ?? nothing,
    )
    this.others = new NotedMap(
      (fact) => new FactNamed(this, 'others', fact),
      () => this.says('others') ?? nothing,
    )
  }

  /** What it says in one respect, noted for the work that asks. */
  says<K extends keyof Content>(name: K): Content[K] | undefined {
    this.#respects ??= new Map()
    return ask(getOrInsert(this.#respects, name, () => new Respect(this, name)) as Respect<K>)
  }

  get lookup(): Lookup {
    this.#lookup ??= this.top.home.lookupOf(this)
    return this.#lookup
  }

  get children(): readonly StoredBlock[] {
    return this.says('children') ?? []
  }

  /** Names of facts are few, and mostly none: who asks for one depends on all. */
  get unread(): ReadonlySet<string> {
    return this.says('unread') ?? noNames
  }

  get blanks(): ReadonlySet<string> {
    return this.says('blanks') ?? noNames
  }

  get title(): string | undefined {
    return this.says('title')
  }

  get about(): Block['about'] {
    const text = this.says('about')
    this.#aboutAt ??= new Anchor(() => this.bound.about?.at ?? this.bound.head)
    return text === undefined ? undefined : { text, at: this.#aboutAt }
  }

  get likeUnknown(): boolean {
    return this.says('likeUnknown') ?? false
  }

  /** As it was bound last: what depends on where it is written. */
  get bound(): Block {
    const bound = this.says('block')
    if (!bound) throw new Error(`The block ${this.path} is no longer there.`)
    return bound
  }

  get isTakenWhole(): boolean {
    return this.says('isTakenWhole') ?? false
  }

  get left(): ReadonlyMap<string, Place> {
    return placesLeft(this, this.says('left') ?? noNames)
  }

  get section(): Block['section'] {
    return this.bound.section
  }

  get node(): BlockNode {
    return this.bound.node
  }

  get head(): Place {
    this.#head ??= new Anchor(() => this.bound.head)
    return this.#head
  }

  /** Itself, for work that found it by its id. */
  get byId(): StoredBlock {
    this.#byId ??= new ById(this)
    return ask(this.#byId)
  }

  get source(): StoredBlock | undefined {
    this.#source ??= new SourceOf(this)
    return ask(this.#source)
  }
}
