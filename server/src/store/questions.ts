import type { Bound } from '../job/bind.ts'
import type { Block, Section } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { equal } from './equal.ts'
import type { Home, StoredBlock } from './stored-block.ts'
import { type Notes, Question, type Source } from './trace.ts'

/** A question about the file as a whole. It is a source too: who asked it need not look again as long as its answer says the same. */
export class InFile<Answer> extends Question<Answer> implements Source {
  readonly #home: Home
  readonly #find: () => Answer
  #revision = -1
  #answer: Answer | undefined

  constructor(home: Home, find: () => Answer) {
    super()
    this.#home = home
    this.#find = find
  }

  get version(): Answer {
    return this.answer()
  }

  override answer(): Answer {
    const { revision } = this.#home
    if (this.#revision !== revision) {
      const now = this.#find()
      if (!equal(now, this.#answer)) this.#answer = now
      this.#revision = revision
    }
    return this.#answer as Answer
  }

  override noteSources(notes: Notes): void {
    notes.from(this)
  }
}

/** Finds a block from another one, as both are bound now. */
export type Find = (from: Block, scope: Scope) => Block | undefined

/** What a block outside its own may answer. */
export class Around extends Question<StoredBlock | undefined> {
  readonly #of: StoredBlock
  readonly #find: Find
  readonly #names: () => readonly string[]
  #revision = -1
  #answer: StoredBlock | undefined

  /** `names`: those of what is looked for at the top of the file, by name or by kind. */
  constructor(of: StoredBlock, find: Find, names: () => readonly string[]) {
    super()
    this.#of = of
    this.#find = find
    this.#names = names
  }

  override answer(): StoredBlock | undefined {
    const { content, top } = this.#of
    if (this.#revision !== top.home.revision) {
      const found = content && this.#find(content.block, top.home.scope)
      this.#answer = found && top.home.stored(found)
      this.#revision = top.home.revision
    }
    return this.#answer
  }

  override noteSources(notes: Notes): void {
    const { top, parent } = this.#of
    notes.from(top)
    const found = this.answer()
    // What is found inside, going outwards, is what would be found whatever else the file has.
    if (parent && found?.parent && found.top === top) return
    if (found) notes.from(found.top)
    for (const name of this.#names())
      for (const source of [top.home.named(name), top.home.only(name)]) {
        notes.from(source)
        const led = source.answer()
        if (led) notes.from(led.top)
      }
  }
}

/** What stands for a block as it is bound. Once that was gone from the file, it is another one, though the block is bound as before. */
export class StandsFor extends Question<StoredBlock> {
  readonly #home: Home
  readonly #block: Block

  constructor(home: Home, block: Block) {
    super()
    this.#home = home
    this.#block = block
  }

  override answer(): StoredBlock {
    return this.#home.stored(this.#block)
  }

  override noteSources(notes: Notes): void {
    notes.from(this.answer().top.text)
  }
}

/** The first name in a path. */
export const headOf = (path: string): string => path.split('.', 1)[0] ?? ''

/** The name that a fact of the block, or of one around it, refers to: one or none. */
export function writtenPath({ content }: StoredBlock, fact: string): readonly string[] {
  for (let block = content?.block; block; block = block.parent) {
    const value = block.facts.get(fact)?.value
    if (typeof value === 'string') return [value]
  }
  return []
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
