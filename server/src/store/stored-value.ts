import { getOrInsert } from '../common/get-or-insert.ts'
import { type Place, placeOfPart, type Value } from '../job/model.ts'
import type { FactNode } from '../syntax/tree.ts'
import { Anchor } from './anchor.ts'
import { equal } from './equal.ts'

/** A value by what it says: the same object as long as that is the same. Where it is written is asked of the text as it stands. */
export class StoredValue implements Value<unknown> {
  readonly value: unknown
  readonly name: string
  readonly provenance?: NonNullable<Value<unknown>['provenance']>
  readonly assumes?: true
  readonly isInherited: boolean
  readonly #find: () => Value<unknown> | undefined
  #at: Anchor | undefined
  #origin: Anchor | undefined
  #parts: Map<number, Anchor> | undefined

  /** `find`: the same fact as it was bound last. */
  constructor(value: Value<unknown>, find: () => Value<unknown> | undefined) {
    this.value = unplaced(value.value)
    this.name = value.name
    if (value.provenance) this.provenance = value.provenance
    if (value.assumes) this.assumes = true
    this.isInherited = value.origin !== undefined
    this.#find = find
  }

  /** The same fact with another value. */
  saying(value: unknown): StoredValue {
    return new StoredValue({ ...this.bound, value }, this.#find)
  }

  says(other: Value<unknown>): boolean {
    return (
      this.name === other.name &&
      this.assumes === other.assumes &&
      this.isInherited === (other.origin !== undefined) &&
      equal(this.provenance, other.provenance) &&
      equal(this.value, unplaced(other.value))
    )
  }

  /** As it was bound last: what depends on where it is written. */
  get bound(): Value<unknown> {
    const bound = this.#find()
    if (!bound) throw new Error(`The fact ${this.name} is no longer there.`)
    return bound
  }

  get at(): Place {
    this.#at ??= new Anchor(() => this.bound.at)
    return this.#at
  }

  get origin(): Place | undefined {
    if (!this.isInherited) return undefined
    this.#origin ??= new Anchor(() => this.bound.origin ?? this.bound.at)
    return this.#origin
  }

  partAt(index: number): Place {
    this.#parts ??= new Map()
    const part = () => placeOfPart(this.bound as Value<readonly unknown[]>, index)
    return getOrInsert(this.#parts, index, () => new Anchor(part))
  }

  get node(): FactNode {
    return this.bound.node
  }
}

/** A value without the places of its parts. */
function unplaced(value: unknown): unknown {
  if (!Array.isArray(value)) return value
  return value.map((item: unknown) => {
    if (typeof item !== 'object' || item === null || !('span' in item)) return item
    const { span: _, ...rest } = item
    return rest
  })
}
