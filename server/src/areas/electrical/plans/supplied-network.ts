import { getOrInsert } from '../../../common/get-or-insert.ts'
import { SamePlaces } from '../../../common/same-places.ts'
import { type NetworkLink, solveNetwork } from '../../../engineering/electrical/dc-network.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { solve } from '../../../store/solve.ts'
import { stringOf } from '../../common/battery-string.ts'
import { readable } from '../../common/stated-fact.ts'
import { lowestOfString } from '../../common/string-facts.ts'
import { resistanceIn } from './conductor-loop.ts'
import type { Island, Place } from './dc-topology.ts'
import { amperesOf, type Draw } from './draws.ts'

/** A battery, or the output of a converter where there is none. */
export interface Source {
  readonly part: BlockId
  readonly place: Place
  /** V; undefined where it is not known. */
  readonly low: number | undefined
  /** What it may give, A. */
  readonly most: number
}

/** What takes from the network. */
export interface Sink {
  readonly part: BlockId
  readonly place: Place
  readonly draw: Draw
}

/** Each source has the stated voltage at its terminals, whatever it gives: the kernel asks for a resistance (Ω), and what is lost in it is added again. */
export const inSource = 1e-9

export const ground = ''
/** The terminals of all sources that are on. No place is this. */
const terminals = '+'
/** The kernel, its results kept by value. */
export const solved = solve(solveNetwork)

export function sourcesOf({ batteries, feeders }: Island, { blockOf, from }: FileLookup): readonly Source[] {
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
export const sinksIn = ({ sinks, feeders }: Island): Island['sinks'] =>
  sinks.filter(({ part, place }) => !feeders.some((one) => one.feeder === part && one.place === place))

interface Wires {
  /** Those of the conductors in their order, then those of the devices. */
  readonly wires: readonly NetworkLink[]
  /** A cable whose resistance is not known counts as none. */
  readonly isPartly: boolean
}

/** Conductors when hot, and closed devices. */
export function wiresOf({ conductors, devices }: Island, file: FileLookup): Wires {
  const resistances = conductors.map((conductor) => resistanceIn(conductor, 'hot', file))
  return {
    wires: [
      ...conductors.map(({ ends }, i) => ({ ends, resistance: resistances[i] ?? 0 })),
      ...devices.map(({ ends }) => ({ ends, resistance: 0 })),
    ],
    isPartly: resistances.includes(undefined),
  }
}

interface Sinks {
  readonly sinks: readonly Sink[]
  /** A part of which it is not known what it takes counts as none. */
  readonly isPartly: boolean
}

/** What each part of an island takes, by what it may take. */
export function sinksOf(
  island: Island,
  drawOf: (part: Block, lookup: Lookup) => Draw | undefined,
  { blockOf, from }: FileLookup,
): Sinks {
  let isPartly = false
  const sinks = sinksIn(island).flatMap(({ part, place }): readonly Sink[] => {
    const block = blockOf(part)
    const draw = drawOf(block, from(block))
    isPartly ||= !draw
    return draw ? [{ part, place, draw }] : []
  })
  return { sinks, isPartly }
}

/** What is known of a network with its sources at one voltage. */
interface Solved {
  /** V, of each part that is fed. */
  readonly reached: ReadonlyMap<BlockId, number>
  /** A; none where some of what a source feeds has no solution. */
  readonly given: ReadonlyMap<BlockId, number>
  /** A, from the first end of a wire to the second; none where there is no solution. */
  readonly through: ReadonlyMap<NetworkLink, number>
  /** Of each part that asks for more than can come to it, what part of its power can. */
  readonly beyond: ReadonlyMap<BlockId, number>
}

/** All sources have one voltage at their terminals, so what hangs together only there is solved by itself: an edit in one branch changes no other. */
export function solvedFrom(
  on: readonly Source[],
  volts: number,
  wires: readonly NetworkLink[],
  sinks: readonly Sink[],
): Solved {
  const reached = new Map<BlockId, number>()
  const given = new Map<BlockId, number>(on.map(({ part }) => [part, 0]))
  const through = new Map<NetworkLink, number>()
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
    for (const [i, wire] of branch.wires.entries())
      through.set(wire, flow.linkCurrents[feeding.length + i] ?? 0)
    for (const [i, { part }] of branch.sinks.entries()) {
      const lost = (flow.voltages.get(terminals) ?? 0) - (flow.drawVoltages[i] ?? 0)
      if (!flow.unfed.includes(i)) reached.set(part, volts - lost)
    }
    for (const [i, { part }] of feeding.entries()) {
      const before = given.get(part)
      if (before !== undefined) given.set(part, before + (flow.linkCurrents[i] ?? 0))
    }
  }
  return { reached, given, through, beyond }
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
export function drawAt(draw: Draw, volts: number): { readonly power: number } | { readonly current: number } {
  const current = amperesOf(draw, volts)
  return current <= draw.current || current < draw.power / volts ? { current } : { power: draw.power }
}
