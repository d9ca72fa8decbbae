import { getOrInsert } from '../../../common/get-or-insert.ts'
import { SamePlaces } from '../../../common/same-places.ts'
import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { partsOfFile } from './dc-parts.ts'
import { topologyOfFile } from './dc-topology.ts'

/** Batteries with the controllers that nothing isolates from them. */
interface Unisolated {
  /** Of a string the first one. */
  readonly batteries: readonly BlockId[]
  readonly controllers: readonly BlockId[]
}

/** By the first of the batteries. */
function unisolatedInFile({ ofFile, blockOf }: FileLookup): ReadonlyMap<BlockId, Unisolated> {
  const { islands, isUnclear } = ofFile(topologyOfFile)
  if (isUnclear) return new Map()
  const isolators = new Set(ofFile(partsOfFile).switches.flatMap((one) => (one.isolates ? [one.device] : [])))
  return new Map(
    [...new Set(islands.values())].flatMap(({ conductors, devices, batteries, sinks }) => {
      const same = new SamePlaces()
      const closed = devices.filter(({ device }) => !isolators.has(device))
      for (const { ends } of [...conductors, ...closed]) same.join(ends[0], ends[1])
      const banks = new Map<string, BlockId[]>()
      for (const { battery, place } of batteries)
        getOrInsert(banks, same.of(place), (): BlockId[] => []).push(battery)
      const fed = new Map<string, BlockId[]>()
      for (const { part, place } of sinks)
        if (blockOf(part).kind === 'controller')
          getOrInsert(fed, same.of(place), (): BlockId[] => []).push(part)
      return [...banks].flatMap(([place, together]) => {
        const controllers = fed.get(place)
        return controllers
          ? together.slice(0, 1).map((first) => [first, { batteries: together, controllers }] as const)
          : []
      })
    }),
  )
}

/** The controllers that a battery feeds with no isolator between, and the batteries that it does so with; undefined where there are none, and of all but
 * the first of these batteries. */
export const unisolatedFrom = plan((battery: Block, lookup: Lookup): Unisolated | undefined =>
  lookup.ofFile(unisolatedInFile).get(idOf(battery)),
)
