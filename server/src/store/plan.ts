import type { Block } from '../job/model.ts'
import type { Lookup } from './lookup.ts'
import { StoredBlock } from './stored-block.ts'
import { resultOf, type Work } from './work.ts'

/** What follows from a block, kept for all who ask until something that it was made from is another. Its result is compared by value, so it
 * holds no section and no node. */
export function plan<R>(work: (block: Block, lookup: Lookup) => R): (block: Block, lookup: Lookup) => R {
  const kept: Work<R> = { name: work.name, of: work }
  return (block, lookup) => {
    const { block: stored } = lookup.from(block)
    if (!(stored instanceof StoredBlock)) throw new Error(`The block ${block.path} is in no store.`)
    return resultOf(stored, kept)
  }
}

/** The same, of what can be read from a block alone. */
export function blockPlan<R>(work: (block: Block) => R): (block: Block) => R {
  const kept: Work<R> = { name: work.name, of: work }
  return (block) => (block instanceof StoredBlock ? resultOf(block, kept) : work(block))
}
