import { getOrInsert } from '../common/get-or-insert.ts'
import type { Value } from '../job/model.ts'
import type { StoredValue } from './stored-value.ts'
import { ask, type Question } from './trace.ts'

export type Facts = ReadonlyMap<string, StoredValue>

/** The facts of a block: who asks for one depends on that one. */
export class NotedMap implements ReadonlyMap<string, Value<unknown>> {
  readonly #one: (name: string) => Question<StoredValue | undefined>
  readonly #all: () => Facts
  #named: Map<string, Question<StoredValue | undefined>> | undefined

  constructor(one: (name: string) => Question<StoredValue | undefined>, all: () => Facts) {
    this.#one = one
    this.#all = all
  }

  get #map(): Facts {
    return this.#all()
  }

  get(name: string): StoredValue | undefined {
    this.#named ??= new Map()
    return ask(getOrInsert(this.#named, name, () => this.#one(name)))
  }

  has(name: string): boolean {
    return this.get(name) !== undefined
  }

  get size(): number {
    return this.#map.size
  }

  forEach(
    each: (value: Value<unknown>, key: string, map: ReadonlyMap<string, Value<unknown>>) => void,
  ): void {
    for (const [name, value] of this.#map) each(value, name, this)
  }

  entries() {
    return this.#map.entries()
  }

  keys() {
    return this.#map.keys()
  }

  values() {
    return this.#map.values()
  }

  [Symbol.iterator]() {
    return this.#map[Symbol.iterator]()
  }
}
