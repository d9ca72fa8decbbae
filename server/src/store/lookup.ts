import type { BoundLookup } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'
import type { FactPath, FactValue } from '../vocabulary/index.ts'
import type { BlockId } from './block-id.ts'

/** Works out what follows from a whole file. */
export type FilePlan<T> = (file: FileLookup) => T

/** What can be asked of a whole file. */
export interface FileLookup {
  /** Every block of the kind that stands at the top of the file. */
  readonly ofKind: (kind: string) => readonly Block[]
  /** What follows from the whole file, worked out once for all who ask. */
  readonly ofFile: <T>(plan: FilePlan<T>) => T
  /** What can be asked from where a block stands. */
  readonly from: (block: Block) => Lookup
  /** The block that a result names. */
  readonly blockOf: (id: BlockId) => Block
}

/** What can be asked from where a block stands. What is asked is noted for the plan or check that asks. */
export interface Lookup extends Omit<BoundLookup, 'from' | 'ofKind'>, FileLookup {
  /** What would follow if the block said this. Nothing of it is kept. */
  readonly suppose: <P extends FactPath, R>(path: P, value: FactValue<P>, then: () => R) => R
}
