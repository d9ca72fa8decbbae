import { getOrInsert } from '../common/get-or-insert.ts'
import { namedBlock, nearBlock, referredBlock } from '../job/lookup.ts'
import type { BlockName, FactPath, FactValue } from '../vocabulary/index.ts'
import type { Lookup } from './lookup.ts'
import { Around, type Find, headOf, writtenPath } from './questions.ts'
import type { StoredBlock } from './stored-block.ts'
import { ask } from './trace.ts'

/** What can be asked from a block. There are thousands in a large job, so what they share is not made for each. */
export class StoredLookup implements Lookup {
  readonly block: StoredBlock
  readonly #questions = new Map<string, Around>()

  constructor(block: StoredBlock) {
    this.block = block
  }

  get #home() {
    return this.block.top.home
  }

  near(kind: BlockName): StoredBlock | undefined {
    if (kind === this.block.kind) return this.block
    return this.#around(
      kind,
      (block, scope) => nearBlock(block, kind, scope),
      () => [kind, ...this.#written(kind)],
    )
  }

  named(path: string): StoredBlock | undefined {
    return this.#around(
      `named ${path}`,
      (block, scope) => namedBlock(block, path, scope),
      () => [headOf(path)],
    )
  }

  referred(fact: string): StoredBlock | undefined {
    return this.#around(
      `of ${fact}`,
      (block, scope) => referredBlock(block, fact, scope),
      () => this.#written(fact),
    )
  }

  suppose<P extends FactPath, R>(path: P, value: FactValue<P>, then: () => R): R {
    return this.#home.suppose(this.block, path.slice(path.indexOf('.') + 1), value, then)
  }

  get isTaken(): boolean {
    const { name, parent } = this.block
    return !parent && name !== undefined && ask(this.#home.isTaken(name))
  }

  get ofKind() {
    return this.#home.fileLookup.ofKind
  }

  get ofFile() {
    return this.#home.fileLookup.ofFile
  }

  get from() {
    return this.#home.fileLookup.from
  }

  get blockOf() {
    return this.#home.fileLookup.blockOf
  }

  get system() {
    return this.#home.fileLookup.system
  }

  get status() {
    return this.#home.fileLookup.status
  }

  get show() {
    return this.#home.fileLookup.show
  }

  get showBand() {
    return this.#home.fileLookup.showBand
  }

  #around(key: string, find: Find, names: () => readonly string[]): StoredBlock | undefined {
    return ask(getOrInsert(this.#questions, key, () => new Around(this.block, find, names)))
  }

  /** The name at the top of the file that a fact refers to: one or none. */
  #written(fact: string): readonly string[] {
    return writtenPath(this.block, fact).map(headOf)
  }
}
