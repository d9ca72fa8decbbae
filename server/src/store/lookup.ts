import type { Block } from '../job/model.ts'
import type { Band } from '../quantity/band.ts'
import type { Kind, UnitSystem } from '../quantity/kinds.ts'
import type { BlockName, FactPath, FactValue } from '../vocabulary/index.ts'
import type { Status } from '../vocabulary/status.ts'
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
  readonly system: UnitSystem
  /** How far the job has got; undefined in a library of parts. */
  readonly status: Status | undefined
  /** A result in the job's own units with the other in brackets. */
  readonly show: (si: number, kind: Kind) => string
  readonly showBand: (band: Band, kind: Kind) => string
}

/** What can be asked from where a block stands. What is asked is noted for the plan or check that asks. */
export interface Lookup extends FileLookup {
  readonly block: Block
  /** The block of the kind that goes with this one: itself, one around it, the only one beside it or in the drive, the only one in the file. */
  near(kind: BlockName): Block | undefined
  /** The block a name stands for, looked for from this block outwards. */
  named(path: string): Block | undefined
  /** The block that a reference of this one stands for: `referred('in')`. */
  referred(fact: string): Block | undefined
  /** Whether this block is a part at the top of the file that others take over. */
  readonly isTaken: boolean
  /** What would follow if the block said this. Nothing of it is kept. */
  suppose<P extends FactPath, R>(path: P, value: FactValue<P>, then: () => R): R
}
