import type { Lookup } from '../../job/lookup.ts'
import type { Block } from '../../job/model.ts'
import { once } from '../../syntax/once.ts'

/** Works a block out once, asked from where it stands, for all who ask: several checks depend on one result. */
export function remembered<R>(
  work: (block: Block, lookup: Lookup) => R,
): (block: Block, lookup: Lookup) => R {
  const results = once((own: Lookup) => work(own.block, own))
  return (block, lookup) => results(lookup.from(block))
}
