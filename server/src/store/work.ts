import { getOrInsert } from '../common/get-or-insert.ts'
import type { Bound } from '../job/bind.ts'
import type { Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import type { FilePlan, Lookup } from './lookup.ts'
import { BoundSection } from './questions.ts'
import type { Home, StoredBlock } from './stored-block.ts'
import { ask, type Ended, Trace } from './trace.ts'

/** Work on a block that is kept until something that it asked has another answer. */
export interface Work<R> {
  readonly name: string
  readonly of: (block: StoredBlock, lookup: Lookup) => R
}

/** What work came to. Throws what it threw. */
export function resultIn(ended: Ended): unknown {
  if ('error' in ended) throw ended.error
  return ended.value
}

/** Work that the store brings up to date. */
abstract class Kept extends Trace {
  protected readonly store: Home

  constructor(store: Home) {
    super()
    this.store = store
  }

  protected abstract get title(): string
  abstract override apart(): Trace

  override answer(): Ended {
    return this.store.settle(this, this.title)
  }
}

export class FileWork extends Kept {
  readonly #plan: FilePlan<unknown>

  constructor(store: Home, plan: FilePlan<unknown>) {
    super(store)
    this.#plan = plan
  }

  protected override get title(): string {
    return this.#plan.name
  }

  override apart(): Trace {
    return new FileWork(this.store, this.#plan)
  }

  protected override work(): unknown {
    return this.#plan(this.store.fileLookup)
  }
}

class BlockWork extends Kept {
  readonly #of: StoredBlock
  readonly #work: Work<unknown>

  constructor(of: StoredBlock, work: Work<unknown>) {
    super(of.top.home)
    this.#of = of
    this.#work = work
  }

  protected override get title(): string {
    return `${this.#work.name} of ${this.#of.path}`
  }

  override apart(): Trace {
    return new BlockWork(this.#of, this.#work)
  }

  protected override work(): unknown {
    return this.#work.of(this.#of, this.#of.lookup)
  }
}

/** Makes something of a section, with where it is written. */
export type OfSection<T> = (bound: Bound, view: View, section: Section) => T

/** What is made of a section, with where it is written. */
export class SectionWork extends Kept {
  #view: View | undefined
  readonly #section: Section
  readonly #make: OfSection<unknown>

  constructor(store: Home, section: Section, make: OfSection<unknown>) {
    super(store)
    this.#section = section
    this.#make = make
  }

  /** The view is not kept: it leads to all sections of the file as it was, and each of those to another state of it. */
  seenIn(view: View): unknown {
    this.#view = view
    try {
      return resultIn(this.answer())
    } finally {
      this.#view = undefined
    }
  }

  protected override get title(): string {
    return this.#make.name
  }

  override apart(): Trace {
    return new SectionWork(this.store, this.#section, this.#make)
  }

  protected override work(): unknown {
    if (!this.#view) throw new Error('A section is seen in a file.')
    return this.#make(ask(new BoundSection(this.store, this.#section)), this.#view, this.#section)
  }
}

/** The result of work on a block. Throws what the work throws. */
export const resultOf = <R>(of: StoredBlock, work: Work<R>): R =>
  resultIn(ask(getOrInsert(of.traces, work, () => new BlockWork(of, work as Work<unknown>)))) as R
