import type { Bound } from '../job/bind.ts'
import type { BoundLookup } from '../job/lookup.ts'
import type { Block, Section } from '../job/model.ts'
import type { Home, StoredBlock } from './stored-block.ts'
import { type Notes, Question, type Source } from './trace.ts'

/** What the directory of a file says. */
export class InFile<Answer> extends Question<Answer> {
  readonly #store: Home
  readonly #find: (store: Home) => Answer

  constructor(store: Home, find: (store: Home) => Answer) {
    super()
    this.#store = store
    this.#find = find
  }

  override answer(): Answer {
    return this.#find(this.#store)
  }

  override noteSources(notes: Notes): void {
    notes.from(this.#store.directory)
  }
}

export type Find = (bound: BoundLookup) => Block | undefined

/** What a block outside its own may answer. */
export class Around extends Question<StoredBlock | undefined> {
  readonly #of: StoredBlock
  readonly #find: Find
  readonly #path: () => string | undefined

  /** `path`: what is looked for by name. */
  constructor(of: StoredBlock, find: Find, path: () => string | undefined) {
    super()
    this.#of = of
    this.#find = find
    this.#path = path
  }

  override answer(): StoredBlock | undefined {
    const { home: store } = this.#of.top
    const bound = store.bound(this.#of)
    const found = bound && this.#find(bound)
    return found && store.stored(found)
  }

  override noteSources(notes: Notes): void {
    const { top } = this.#of
    notes.from(top)
    notes.from(top.home.directory)
    const found = this.answer()
    if (found) notes.from(found.top)
    const path = this.#path()
    const led = path === undefined ? undefined : top.home.topOf(path)
    if (led) notes.from(led)
  }
}

/** The name that a fact of the block, or of one around it, refers to. */
export function writtenPath({ content }: StoredBlock, fact: string): string | undefined {
  for (let block = content?.block; block; block = block.parent) {
    const value = block.facts.get(fact)?.value
    if (typeof value === 'string') return value
  }
  return undefined
}

/** A section as it is bound now. */
export class BoundSection extends Question<Bound> implements Source {
  readonly #store: Home
  readonly #section: Section

  constructor(store: Home, section: Section) {
    super()
    this.#store = store
    this.#section = section
  }

  get version(): Bound {
    return this.answer()
  }

  override answer(): Bound {
    return this.#store.boundSection(this.#section)
  }

  override noteSources(notes: Notes): void {
    notes.from(this)
  }
}
