import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { readable } from '../../common/stated-fact.ts'
import { endsOf } from './cable-circuit.ts'
import { flowAt } from './load-flow.ts'

/** How a controller, load or converter is fed with all drives and loads at rated power. */
export interface Supply {
  /** At its terminals at the lowest, V. */
  readonly volts: number
  /** Lost on the way from the batteries and back, as a share of their voltage. */
  readonly drop: number
  /** Allowed; undefined where what the job says of it cannot be read. */
  readonly limit: number | undefined
  readonly limitFrom: string
  /** Parts of the network that are not known count as none. */
  readonly isPartly: boolean
}

/** Common practice for propulsion feeders, no source. */
const usualDrop = 0.03

/** Cables by the parts at which they end. */
const cablesAt = ({ ofKind, from }: FileLookup): ReadonlyMap<BlockId, readonly BlockId[]> => {
  const at = new Map<BlockId, BlockId[]>()
  const cables = [...ofKind('drive').flatMap((drive) => childrenOf(drive, 'cable')), ...ofKind('cable')]
  for (const cable of cables)
    for (const end of readable(() => endsOf(cable, from(cable))) ?? [])
      if (end) at.set(idOf(end), [...(at.get(idOf(end)) ?? []), idOf(cable)])
  return at
}

/** Undefined where no battery feeds it, or what it takes is not known. */
export const supplyOf = plan((part: Block, lookup: Lookup): Supply | undefined => {
  const flow = flowAt(part, lookup)
  const volts = flow?.lowest
  if (!flow || volts === undefined) return undefined
  const cables = (lookup.ofFile(cablesAt).get(idOf(part)) ?? []).map(lookup.blockOf)
  const stated = cables.flatMap((cable) => factOf(cable, 'cable.drop')?.value.high ?? [])
  const isUnread = cables.some(({ unread }) => unread.has('drop'))
  return {
    volts,
    drop: 1 - volts / flow.volts,
    limit: isUnread ? undefined : Math.max(usualDrop, ...stated),
    limitFrom:
      stated.length === 0 ? 'common practice for propulsion feeders, no source' : 'the cable that ends there',
    isPartly: flow.isPartly,
  }
})
