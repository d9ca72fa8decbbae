import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { stringOf } from '../../common/battery-string.ts'
import { readable } from '../../common/stated-fact.ts'
import { type Island, topologyOfFile } from './dc-topology.ts'

/** What one network of cables, switches and busbars feeds. */
export interface FedTogether {
  /** Of a string the first one. */
  readonly batteries: readonly BlockId[]
  readonly loads: readonly BlockId[]
  /** At their input. */
  readonly converters: readonly BlockId[]
}

/** By the batteries and controllers in the network, and by the converters whose output it is at. Nothing in it follows from the length of a cable. */
export function fedTogether(file: FileLookup): ReadonlyMap<BlockId, FedTogether> {
  const found = new Map<BlockId, FedTogether>()
  for (const island of new Set(file.ofFile(topologyOfFile).islands.values())) {
    const fed = fedBy(island, file)
    const controllers = island.sinks.flatMap(({ part }) =>
      file.blockOf(part).kind === 'controller' ? [part] : [],
    )
    const outputs = island.feeders.flatMap(({ kind, feeder }) => (kind === 'converter' ? [feeder] : []))
    const members = fed.batteries.flatMap((head) => {
      const block = file.blockOf(head)
      return readable(() => stringOf(block, file.from(block)).map(idOf)) ?? [head]
    })
    for (const part of [...members, ...controllers, ...outputs]) found.set(part, fed)
  }
  return found
}

function fedBy({ batteries, sinks, feeders }: Island, { blockOf }: FileLookup): FedTogether {
  const isOutput = (part: BlockId, place: string) =>
    feeders.some((one) => one.feeder === part && one.place === place)
  const taking = sinks.filter(({ part, place }) => !isOutput(part, place))
  const ofKind = (kind: string) => taking.flatMap(({ part }) => (blockOf(part).kind === kind ? [part] : []))
  return {
    batteries: batteries.map(({ battery }) => battery),
    loads: ofKind('load'),
    converters: ofKind('converter'),
  }
}
