import type { Lookup } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'

/** Works a block out once for all who ask from the same place: several checks hang on one result. */
export function remembered<R>(
  work: (block: Block, lookup: Lookup) => R,
): (block: Block, lookup: Lookup) => R {
  const results = new WeakMap<Lookup, WeakMap<Block, { readonly result: R }>>()
  return (block, lookup) => {
    const ofLookup = results.get(lookup) ?? new WeakMap<Block, { readonly result: R }>()
    results.set(lookup, ofLookup)
    const known = ofLookup.get(block) ?? { result: work(block, lookup) }
    ofLookup.set(block, known)
    return known.result
  }
}
