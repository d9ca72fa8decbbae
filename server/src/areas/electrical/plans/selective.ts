import { type Selectivity, selectivity } from '../../../engineering/electrical/selectivity.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { ok } from '../../common/outcome.ts'
import { outcomeOf } from './cable-outcome.ts'
import { faultsAt } from './faults.ts'
import { curveOf } from './short-circuit-heat.ts'

/** By each fuse or breaker those before it. */
const beforeEach = ({ ofKind, from }: FileLookup): ReadonlyMap<BlockId, readonly BlockId[]> => {
  const before = new Map<BlockId, BlockId[]>()
  const all = [
    ...ofKind('drive').flatMap((drive) => childrenOf(drive, 'protection')),
    ...ofKind('protection'),
  ]
  for (const device of all)
    for (const next of faultsAt(device, from(device))?.next ?? [])
      before.set(next, [...(before.get(next) ?? []), idOf(device)])
  return before
}

/** A fuse or breaker nearer the battery, and whether it stays closed. */
interface Before {
  readonly device: BlockId
  readonly selective: Selectivity
}

const deviceOf = (block: Block, rating: number) => {
  const curve = curveOf(block)
  const fuseClass = factOf(block, 'protection.fuse-class')?.value
  return { rating, ...(curve && { curve }), ...(fuseClass && { class: fuseClass }) }
}

/** Whether, in a short circuit behind a fuse or breaker, it alone opens, of those before it in the network. */
export const selectiveTo = plan((near: Block, lookup: Lookup): readonly Before[] => {
  const faults = faultsAt(near, lookup)
  const rating = factOf(near, 'protection.rating')?.value
  if (faults?.lowest === undefined || rating === undefined) return []
  const range = { least: Math.min(faults.lowest, faults.highest), most: faults.highest }
  return (lookup.ofFile(beforeEach).get(idOf(near)) ?? []).flatMap((id): readonly Before[] => {
    const far = lookup.blockOf(id)
    const farRating = factOf(far, 'protection.rating')?.value
    if (farRating === undefined || lookup.referred('selective-with') === far) return []
    const found = outcomeOf(() => ok(selectivity(deviceOf(far, farRating), deviceOf(near, rating), range)))
    return found.ok ? [{ device: id, selective: found.value }] : []
  })
})
