import { solveNetwork } from '../../../engineering/electrical/dc-network.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { solve } from '../../../store/solve.ts'
import { stringOf } from '../../common/battery-string.ts'
import { readable } from '../../common/stated-fact.ts'
import { lowestOfString } from '../../common/string-facts.ts'
import { resistanceIn } from './conductor-loop.ts'
import { type Island, type Place, topologyOfFile } from './dc-topology.ts'
import { amperesOf, type Draw, ratedDraw } from './draws.ts'

/** The network with all that it feeds at rated power, its sources at the low end of their window. */
export interface LoadFlow {
  /** At the sources, V. */
  readonly volts: number
  /** The lowest at each part that is fed, V: with all sources on, and with each battery off where the others may give enough. */
  readonly voltages: ReadonlyMap<BlockId, number>
  /** With all sources on, A. */
  readonly given: ReadonlyMap<BlockId, number>
  /** What part of the power can be supplied at most, and the parts that ask for it, where not all can. */
  readonly beyond?: { readonly share: number; readonly parts: readonly BlockId[] }
  /** Cables whose resistance and parts whose power is not known: they count as none. */
  readonly notCounted: readonly BlockId[]
}

export const notAllKnown =
  'a cable of unknown length or size loses nothing, and a load of unknown power takes none'

/** A battery, or the output of a converter where there is none. */
interface Source {
  readonly part: BlockId
  readonly place: Place
  /** V; undefined where it is not known. */
  readonly low: number | undefined
  /** What it may give, A. */
  readonly most: number
}

interface Sink {
  readonly part: BlockId
  readonly place: Place
  readonly draw: Draw
}

/** Each source has the stated voltage at its terminals, whatever it gives: the kernel asks for a resistance (Ω), and what is lost in it is added again. */
const inSource = 1e-9

/** Above so many batteries none of them is tried off. Each costs one more solution. */
const mostTriedOff = 4

const ground = ''
/** The terminals of all sources that are on. No place is this. */
const terminals = '+'
const solved = solve(solveNetwork)

/** The load flow of each island by the parts that it feeds and that feed it. */
const flowsOfFile = (file: FileLookup): ReadonlyMap<BlockId, LoadFlow> => {
  const flows = new Map<BlockId, LoadFlow>()
  for (const island of new Set(file.ofFile(topologyOfFile).islands.values())) {
    const flow = flowOf(island, file)
    if (!flow) continue
    for (const { battery } of island.batteries) flows.set(battery, flow)
    for (const { part } of sinksIn(island)) flows.set(part, flow)
  }
  return flows
}

function sourcesOf({ batteries, feeders }: Island, { blockOf, from }: FileLookup): readonly Source[] {
  if (batteries.length > 0)
    return batteries.map(({ battery, place }) => {
      const string = readable(() => stringOf(blockOf(battery), from(blockOf(battery)))) ?? []
      return {
        part: battery,
        place,
        low: string.length > 0 ? readable(() => lowestOfString(string)) : undefined,
        most:
          least(string.flatMap((one) => factOf(one, 'battery.current')?.value ?? [])) ??
          Number.POSITIVE_INFINITY,
      }
    })
  return feeders
    .filter(({ kind }) => kind === 'converter')
    .map(({ feeder, place }) => ({
      part: feeder,
      place,
      low: factOf(blockOf(feeder), 'converter.output')?.value.low,
      most: Number.POSITIVE_INFINITY,
    }))
}

/** Controllers, motors, loads and converters at their input. */
const sinksIn = ({ sinks, feeders }: Island): Island['sinks'] =>
  sinks.filter(({ part, place }) => !feeders.some((one) => one.feeder === part && one.place === place))

function flowOf(island: Island, file: FileLookup): LoadFlow | undefined {
  const { blockOf, from } = file
  const sources = sourcesOf(island, file)
  const volts = least(sources.flatMap(({ low }) => low ?? []))
  if (volts === undefined) return undefined
  const notCounted: BlockId[] = []
  const sinks = sinksIn(island).flatMap(({ part, place }): readonly Sink[] => {
    const block = blockOf(part)
    const draw = ratedDraw(block, from(block))
    if (!draw) notCounted.push(part)
    return draw ? [{ part, place, draw }] : []
  })
  const links = island.conductors.map((conductor) => {
    const resistance = resistanceIn(conductor, 'hot', file)
    if (resistance === undefined) notCounted.push(conductor.cable)
    return { ends: conductor.ends, resistance: resistance ?? 0 }
  })
  const closed = island.devices.map(({ ends }) => ({ ends, resistance: 0 }))
  const flowFrom = (on: readonly Source[]) =>
    solved({
      links: [
        ...on.map(({ place }) => ({ ends: [terminals, place] as const, resistance: 0 })),
        ...links,
        ...closed,
      ],
      sources: [{ negative: ground, positive: terminals, emf: volts, resistance: inSource }],
      draws: sinks.map(({ place, draw }) => ({ negative: ground, positive: place, ...drawAt(draw, volts) })),
    })
  const all = flowFrom(sources)
  const needed = sinks.reduce((sum, { draw }) => sum + (amperesOf(draw, volts) ?? 0), 0)
  const others = (off: Source) => sources.filter((one) => one !== off)
  const triedOff = sources.length > 1 && sources.length <= mostTriedOff ? sources : []
  const mayBeOff = triedOff.filter((off) => others(off).reduce((sum, { most }) => sum + most, 0) >= needed)
  const voltages = new Map<BlockId, number>()
  for (const flow of [all, ...mayBeOff.map((off) => flowFrom(others(off)))])
    if (flow.outcome === 'solved')
      for (const [i, { part }] of sinks.entries())
        if (!flow.unfed.includes(i)) {
          const lost = (flow.voltages.get(terminals) ?? 0) - (flow.drawVoltages[i] ?? 0)
          voltages.set(part, Math.min(voltages.get(part) ?? volts, volts - lost))
        }
  return {
    volts,
    voltages,
    given: new Map(
      all.outcome === 'solved' ? sources.map(({ part }, i) => [part, all.linkCurrents[i] ?? 0]) : [],
    ),
    ...(all.outcome === 'no-solution' && {
      beyond: { share: all.share, parts: all.draws.flatMap((i) => sinks[i]?.part ?? []) },
    }),
    notCounted: [...new Set(notCounted)],
  }
}

/** A load that states both counts with the larger one. */
const drawAt = ({ power, current }: Draw, volts: number) =>
  power / volts >= current ? { power } : { current }

/** The load flow that feeds a part, or that a battery feeds; undefined where nothing leads to it, or no voltage is known. */
export const loadFlowAt = plan((part: Block, { ofFile }: Lookup): LoadFlow | undefined =>
  ofFile(flowsOfFile).get(idOf(part)),
)

/** The lowest voltage at which a part is fed at rated load, V. */
export const voltageAt = plan((part: Block, lookup: Lookup): number | undefined =>
  loadFlowAt(part, lookup)?.voltages.get(idOf(part)),
)
