import type { Lookup } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'
import { once } from '../syntax/once.ts'

/** Works a block out once for all who ask from the same place: several checks hang on one result. */
export function remembered<R>(
  work: (block: Block, lookup: Lookup) => R,
): (block: Block, lookup: Lookup) => R {
  const from = once((lookup: Lookup) => once((block: Block) => work(block, lookup)))
  return (block, lookup) => from(lookup)(block)
}
