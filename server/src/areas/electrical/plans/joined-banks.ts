import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { topologyOfFile } from './dc-topology.ts'

/** By each battery, or first one of a string, the first of those that cables and closed switches put side by side with it. */
const firstBeside = ({ ofFile }: FileLookup): ReadonlyMap<BlockId, BlockId> =>
  new Map(
    [...new Set(ofFile(topologyOfFile).islands.values())].flatMap(({ batteries: [first, ...others] }) =>
      first ? others.map(({ battery }) => [battery, first.battery] as const) : [],
    ),
  )

/** The battery, or first one of a string, that is side by side with a battery and comes before it; undefined of the first, and of one alone. */
export const besideBefore = plan((battery: Block, lookup: Lookup): BlockId | undefined =>
  lookup.ofFile(firstBeside).get(idOf(battery)),
)
