import { getOrInsert } from '../../../common/get-or-insert.ts'
import { SamePlaces } from '../../../common/same-places.ts'
import { childrenOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { topologyOfFile } from './dc-topology.ts'

/** The switches that a precharge bridges. */
const bridged = ({ ofKind, from }: FileLookup): ReadonlySet<BlockId> => {
  const all = [...ofKind('precharge'), ...ofKind('drive').flatMap((drive) => childrenOf(drive, 'precharge'))]
  return new Set(
    all.flatMap((precharge) => {
      const around = from(precharge).referred('around')
      return around ? [idOf(around)] : []
    }),
  )
}

/** By each switch that a precharge bridges, the controllers on the side of it that no battery feeds while all such switches are open: what the precharge
 * charges. None for a switch that is in no circuit, or with a battery on both sides, or on neither. */
export function controllersBehindSwitch(file: FileLookup): ReadonlyMap<BlockId, readonly BlockId[]> {
  const open = file.ofFile(bridged)
  if (open.size === 0) return new Map()
  const { islands, isUnclear } = file.ofFile(topologyOfFile)
  if (isUnclear) return new Map()
  const affected = new Set([...open].flatMap((device) => islands.get(device) ?? []))
  return new Map(
    [...affected].flatMap(({ conductors, devices, batteries, sinks }) => {
      const same = new SamePlaces()
      const closed = devices.filter(({ device }) => !open.has(device))
      for (const { ends } of [...conductors, ...closed]) same.join(ends[0], ends[1])
      const live = new Set(batteries.map(({ place }) => same.of(place)))
      const at = new Map<string, BlockId[]>()
      for (const { part, place } of sinks)
        if (file.blockOf(part).kind === 'controller')
          getOrInsert(at, same.of(place), (): BlockId[] => []).push(part)
      return devices.flatMap(({ device, ends }): readonly (readonly [BlockId, readonly BlockId[]])[] => {
        const dead = ends.map((place) => same.of(place)).filter((place) => !live.has(place))
        const [behind] = dead
        return !open.has(device) || behind === undefined || dead.length === 2
          ? []
          : [[device, at.get(behind) ?? []]]
      })
    }),
  )
}
