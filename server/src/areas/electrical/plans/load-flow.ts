import type { Block } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { ok } from '../../common/outcome.ts'
import { outcomeOf } from './cable-outcome.ts'
import { type Island, topologyOfFile } from './dc-topology.ts'
import { amperesOf, ratedDraw } from './draws.ts'
import { type Source, sinksIn, sinksOf, solvedFrom, sourcesOf, wiresOf } from './supplied-network.ts'

/** What the solved network says of a part that batteries feed: all at rated power, the sources at the low end of their window. */
export interface PartFlow {
  /** At the sources, V. */
  readonly volts: number
  /** The lowest at the part, V: with all sources on, and with each battery off where the others may give enough. */
  readonly lowest?: number
  /** What part of the power can be supplied at most, of one that asks for more. */
  readonly share?: number
  /** A cable whose resistance or a part whose power is not known counts as none. */
  readonly isPartly: boolean
}

export const notAllKnown =
  'a cable of unknown length or size loses nothing, and a load of unknown power takes none'

/** Above so many batteries none of them is tried off. Each costs one more solution. */
const mostTriedOff = 4

/** By the parts that are fed. */
const flowsOfFile = (file: FileLookup): ReadonlyMap<BlockId, PartFlow> =>
  new Map(
    [...new Set(file.ofFile(topologyOfFile).islands.values())].flatMap((island) => {
      const found = outcomeOf(() => ok(flowOf(island, file)))
      return found.ok ? found.value : []
    }),
  )

function flowOf(island: Island, file: FileLookup): readonly (readonly [BlockId, PartFlow])[] {
  const sources = sourcesOf(island, file)
  const volts = least(sources.flatMap(({ low }) => low ?? []))
  if (volts === undefined) return []
  const { sinks, isPartly: isDrawUnknown } = sinksOf(island, ratedDraw, file)
  const { wires, isPartly: isWireUnknown } = wiresOf(island, file)
  const flowFrom = (on: readonly Source[]) => solvedFrom(on, volts, wires, sinks)
  const all = flowFrom(sources)
  const needed = sinks.reduce((sum, { draw }) => sum + amperesOf(draw, volts), 0)
  const others = (off: Source) => sources.filter((one) => one !== off)
  const triedOff = sources.length > 1 && sources.length <= mostTriedOff ? sources : []
  const mayBeOff = triedOff.filter((off) => others(off).reduce((sum, { most }) => sum + most, 0) >= needed)
  const voltages = new Map<BlockId, number>()
  for (const { reached } of [all, ...mayBeOff.map((off) => flowFrom(others(off)))])
    for (const [part, lowest] of reached) voltages.set(part, Math.min(voltages.get(part) ?? volts, lowest))
  const said = { volts, isPartly: isDrawUnknown || isWireUnknown }
  return sinksIn(island).map(({ part }): readonly [BlockId, PartFlow] => {
    const [lowest, share] = [voltages.get(part), all.beyond.get(part)]
    return [part, { ...said, ...(lowest !== undefined && { lowest }), ...(share !== undefined && { share }) }]
  })
}

/** Undefined where nothing leads to it, or no voltage is known. */
export const flowAt = plan(function flowAt(part: Block, { ofFile }: Lookup): PartFlow | undefined {
  return ofFile(flowsOfFile).get(idOf(part))
})
