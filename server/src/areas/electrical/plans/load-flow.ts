import { getOrInsert } from '../../../common/get-or-insert.ts'
import { SamePlaces } from '../../../common/same-places.ts'
import { type NetworkLink, solveNetwork } from '../../../engineering/electrical/dc-network.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { solve } from '../../../store/solve.ts'
import { stringOf } from '../../common/battery-string.ts'
import { ok } from '../../common/outcome.ts'
import { readable } from '../../common/stated-fact.ts'
import { lowestOfString } from '../../common/string-facts.ts'
import { outcomeOf } from './cable-outcome.ts'
import { resistanceIn } from './conductor-loop.ts'
import { type Island, type Place, topologyOfFile } from './dc-topology.ts'
import { amperesOf, type Draw, ratedDraw } from './draws.ts'

/** What the solved network says of a battery, or of a part that it feeds: all at rated power, the sources at the low end of their window. */
export interface PartFlow {
  /** At the sources, V. */
  readonly volts: number
  /** The lowest at the part, V: with all sources on, and with each battery off where the others may give enough. */
  readonly lowest?: number
  /** What the battery gives with all sources on, A. */
  readonly given?: number
  /** What part of the power can be supplied at most, of one that asks for more. */
  readonly share?: number
  /** A cable whose resistance or a part whose power is not known counts as none. */
  readonly isPartly: boolean
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

/** By batteries and the parts that they feed. */
const flowsOfFile = (file: FileLookup): ReadonlyMap<BlockId, PartFlow> =>
  new Map(
    [...new Set(file.ofFile(topologyOfFile).islands.values())].flatMap((island) => {
      const found = outcomeOf(() => ok(flowOf(island, file)))
      return found.ok ? found.value : []
    }),
  )

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

function flowOf(island: Island, file: FileLookup): readonly (readonly [BlockId, PartFlow])[] {
  const { blockOf, from } = file
  const sources = sourcesOf(island, file)
  const volts = least(sources.flatMap(({ low }) => low ?? []))
  if (volts === undefined) return []
  let isPartly = false
  const sinks = sinksIn(island).flatMap(({ part, place }): readonly Sink[] => {
    const block = blockOf(part)
    const draw = ratedDraw(block, from(block))
    isPartly ||= !draw
    return draw ? [{ part, place, draw }] : []
  })
  const links = island.conductors.map((conductor) => {
    const resistance = resistanceIn(conductor, 'hot', file)
    isPartly ||= resistance === undefined
    return { ends: conductor.ends, resistance: resistance ?? 0 }
  })
  const wires = [...links, ...island.devices.map(({ ends }) => ({ ends, resistance: 0 }))]
  const flowFrom = (on: readonly Source[]) => solvedFrom(on, volts, wires, sinks)
  const all = flowFrom(sources)
  const needed = sinks.reduce((sum, { draw }) => sum + (amperesOf(draw, volts) ?? 0), 0)
  const others = (off: Source) => sources.filter((one) => one !== off)
  const triedOff = sources.length > 1 && sources.length <= mostTriedOff ? sources : []
  const mayBeOff = triedOff.filter((off) => others(off).reduce((sum, { most }) => sum + most, 0) >= needed)
  const voltages = new Map<BlockId, number>()
  for (const { reached } of [all, ...mayBeOff.map((off) => flowFrom(others(off)))])
    for (const [part, lowest] of reached) voltages.set(part, Math.min(voltages.get(part) ?? volts, lowest))
  const said = { volts, isPartly }
  return [
    ...sources.map(({ part }): readonly [BlockId, PartFlow] => {
      const given = all.given.get(part)
      return [part, { ...said, ...(given !== undefined && { given }) }]
    }),
    ...sinksIn(island).map(({ part }): readonly [BlockId, PartFlow] => {
      const [lowest, share] = [voltages.get(part), all.beyond.get(part)]
      return [
        part,
        { ...said, ...(lowest !== undefined && { lowest }), ...(share !== undefined && { share }) },
      ]
    }),
  ]
}

interface Solved {
  /** V, of each part that is fed. */
  readonly reached: ReadonlyMap<BlockId, number>
  /** A; none where some of what a source feeds has no solution. */
  readonly given: ReadonlyMap<BlockId, number>
  /** Of each part that asks for more than can come to it, what part of its power can. */
  readonly beyond: ReadonlyMap<BlockId, number>
}

/** All sources have one voltage at their terminals, so what hangs together only there is solved by itself: an edit in one branch changes no other. */
function solvedFrom(
  on: readonly Source[],
  volts: number,
  wires: readonly NetworkLink[],
  sinks: readonly Sink[],
): Solved {
  const reached = new Map<BlockId, number>()
  const given = new Map<BlockId, number>(on.map(({ part }) => [part, 0]))
  const beyond = new Map<BlockId, number>()
  for (const branch of branchesOf(on, wires, sinks)) {
    const feeding = on.filter(({ place }) => branch.at.has(place))
    const flow = solved({
      links: [
        ...feeding.map(({ place }) => ({ ends: [terminals, place] as const, resistance: 0 })),
        ...branch.wires,
      ],
      sources: [{ negative: ground, positive: terminals, emf: volts, resistance: inSource }],
      draws: branch.sinks.map(({ place, draw }) => ({
        negative: ground,
        positive: place,
        ...drawAt(draw, volts),
      })),
    })
    if (flow.outcome === 'no-solution') {
      for (const i of flow.draws) if (branch.sinks[i]) beyond.set(branch.sinks[i].part, flow.share)
      for (const { part } of feeding) given.delete(part)
      continue
    }
    for (const [i, { part }] of branch.sinks.entries()) {
      const lost = (flow.voltages.get(terminals) ?? 0) - (flow.drawVoltages[i] ?? 0)
      if (!flow.unfed.includes(i)) reached.set(part, volts - lost)
    }
    for (const [i, { part }] of feeding.entries()) {
      const before = given.get(part)
      if (before !== undefined) given.set(part, before + (flow.linkCurrents[i] ?? 0))
    }
  }
  return { reached, given, beyond }
}

/** What hangs together without passing the terminals of a source. */
interface Branch {
  readonly wires: NetworkLink[]
  readonly sinks: Sink[]
  /** The terminals that it is at. */
  readonly at: Set<Place>
}

/** Those that feed something. */
function branchesOf(
  on: readonly Source[],
  wires: readonly NetworkLink[],
  sinks: readonly Sink[],
): readonly Branch[] {
  const live = new Set(on.map(({ place }) => place))
  const same = new SamePlaces()
  for (const { ends } of wires) if (!ends.some((end) => live.has(end))) same.join(...ends)
  const branches = new Map<Place, Branch>()
  const branchAt = (place: Place) =>
    getOrInsert(branches, same.of(place), (): Branch => ({ wires: [], sinks: [], at: new Set() }))
  for (const wire of wires) {
    const own = wire.ends.find((end) => !live.has(end))
    if (own === undefined) continue
    const branch = branchAt(own)
    branch.wires.push(wire)
    for (const end of wire.ends) if (live.has(end)) branch.at.add(end)
  }
  for (const sink of sinks) {
    const branch = branchAt(sink.place)
    branch.sinks.push(sink)
    if (live.has(sink.place)) branch.at.add(sink.place)
  }
  return [...branches.values()].filter(({ sinks: fed }) => fed.length > 0)
}

/** A load that states both counts with the larger one. */
const drawAt = ({ power, current }: Draw, volts: number) =>
  power / volts >= current ? { power } : { current }

/** Undefined where nothing leads to it, or no voltage is known. */
export const flowAt = plan(function flowAt(part: Block, { ofFile }: Lookup): PartFlow | undefined {
  return ofFile(flowsOfFile).get(idOf(part))
})
