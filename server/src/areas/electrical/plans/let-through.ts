import { getOrInsert } from '../../../common/get-or-insert.ts'
import { reaches } from '../../../engineering/compare.ts'
import {
  type Circuit,
  type CircuitLink,
  circuitOf,
  type LetThrough,
  letThrough,
} from '../../../engineering/electrical/let-through.ts'
import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import { type BlockId, between } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { positiveOf } from './cable-pole.ts'
import { partsOfFile } from './dc-parts.ts'
import { type CablesAt, type Device, type Island, type Place, topologyOfFile } from './dc-topology.ts'
import { type UnprotectedPart, unprotectedIn } from './unprotected.ts'

/** A DC circuit, as far as overcurrent devices part it. */
interface DcCircuit {
  readonly island: Island
  readonly circuit: Circuit
  /** What limits each link. The first ones are the cables, each with the devices in it. */
  readonly limits: readonly (Limit | undefined)[]
  readonly runs: readonly Run[]
  /** Indices of runs. */
  readonly runOf: ReadonlyMap<BlockId, number>
  /** Runs without a device by the places that they join: they carry one current together. */
  readonly beside: ReadonlyMap<string, readonly number[]>
  readonly unprotected: UnprotectedPart
  /** Fuses and breakers by the places of their sides. */
  readonly fusesAt: ReadonlyMap<string, readonly Device[]>
  /** The longest conductor from a battery to each fuse or breaker before which there is no other, m. */
  readonly leadTo: ReadonlyMap<BlockId, number>
}

/** A fuse or breaker, or a source that limits its own current. */
export interface Limit {
  readonly device: BlockId
  /** A. */
  readonly rating: number
}

/** A cable from end to end. */
interface Run {
  readonly cable: BlockId
  readonly ends: readonly [Place, Place]
  /** In its order. */
  readonly devices: readonly Device[]
}

/** What a charger or a converter comes from. No id is this. */
const outside = between

const circuitsOfFile = ({ ofFile }: FileLookup): ReadonlyMap<BlockId, DcCircuit> => {
  const circuits = new Map<Island, DcCircuit>()
  return new Map(
    [...ofFile(topologyOfFile).islands].map(([id, island]) => [
      id,
      getOrInsert(circuits, island, () => dcCircuit(island)),
    ]),
  )
}

function dcCircuit(island: Island): DcCircuit {
  const { devices, batteries, feeders } = island
  const runs = runsOf(island)
  const limits: (Limit | undefined)[] = runs.map(({ devices: inside }) => smallest(inside))
  const links: CircuitLink[] = runs.map(({ ends }, i) => linkOf(ends, limits[i]))
  for (const one of devices.filter(({ within }) => within === undefined)) {
    const limit = smallest([one])
    links.push(linkOf(one.ends, limit))
    limits.push(limit)
  }
  for (const { feeder, place, current } of feeders) {
    links.push({ ends: [outside, place], rating: current })
    limits.push({ device: feeder, rating: current })
  }
  const beside = new Map<string, number[]>()
  for (const [i, one] of runs.entries()) getOrInsert(beside, besideWhat(one), (): number[] => []).push(i)
  const fusesAt = new Map<string, Device[]>()
  for (const device of devices)
    if (device.kind === 'protection')
      for (const end of device.ends) getOrInsert(fusesAt, end, (): Device[] => []).push(device)
  const unprotected = unprotectedIn(island)
  const leadTo = new Map<BlockId, number>()
  for (const { far, reach } of unprotected.conductors.values())
    for (const { device } of fusesAt.get(far) ?? [])
      leadTo.set(device, Math.max(leadTo.get(device) ?? 0, reach))
  return {
    island,
    circuit: circuitOf(links, [outside, ...batteries.map(({ place }) => place)]),
    limits,
    runs,
    runOf: new Map(runs.map(({ cable }, i) => [cable, i])),
    beside,
    unprotected,
    fusesAt,
    leadTo,
  }
}

function runsOf({ of, conductors, devices }: Island): readonly Run[] {
  const within = new Map<BlockId, Device[]>()
  for (const one of devices) if (one.within) getOrInsert(within, one.within, (): Device[] => []).push(one)
  return [...of].flatMap(([cable, pieces]) => {
    const [first, last] = [conductors[pieces[0] ?? -1], conductors[pieces.at(-1) ?? -1]]
    if (!first || !last) return []
    const inside = within.get(cable) ?? []
    const from = first.before === 0 ? first.ends[0] : inside[0]?.ends[0]
    const to = last.before === inside.length ? last.ends[1] : inside.at(-1)?.ends[1]
    return from && to ? [{ cable, ends: [from, to], devices: inside }] : []
  })
}

/** The fuse or breaker of the smallest rating, the last of those alike. */
const smallest = (devices: readonly Device[]): Device | undefined =>
  devices
    .filter(({ kind }) => kind === 'protection')
    .reduce<Device | undefined>((least, one) => (least && least.rating < one.rating ? least : one), undefined)

const linkOf = (ends: readonly [Place, Place], limit: Limit | undefined): CircuitLink =>
  limit ? { ends, rating: limit.rating } : { ends }

/** A cable with a device in it is by itself. */
const besideWhat = ({ cable, ends, devices }: Run): string =>
  devices.length === 0 ? [...ends].sort().join(between) : cable

/** What the overcurrent devices of the file let through to a piece of DC cable from one of its ends, A, and which of them limit it. */
export interface FedFrom {
  readonly amps: number
  readonly limitedBy: readonly Limit[]
  /** It is before the first fuse or breaker: what limits it lies behind it. */
  readonly isLead: boolean
}

/** The circuit that a cable is in. It is the same for whoever asks as long as nothing in it is another. */
const circuitAt = plan((cable: Block, lookup: Lookup): DcCircuit | undefined =>
  lookup.ofFile(circuitsOfFile).get(positiveOf(cable, lookup)),
)

/** The fuses and breakers in a DC cable. */
export function fusesIn(cable: Block, lookup: Lookup): readonly BlockId[] {
  const circuit = circuitAt(cable, lookup)
  const run = circuit?.runs[circuit.runOf.get(idOf(cable)) ?? -1]
  return (run?.devices ?? []).flatMap(({ kind, device }) => (kind === 'protection' ? [device] : []))
}

const isUnclear = ({ ofFile }: FileLookup): boolean => ofFile(topologyOfFile).isUnclear

/** The DC cables that join the same places as a cable, itself among them, carry one current together. */
interface Beside {
  /** The first of them: what holds for all is worked out for that one. */
  readonly first: BlockId
  readonly count: number
}

export const besideOf = plan((cable: Block, lookup: Lookup): Beside => {
  const all = cablesBeside(cable, lookup)
  return { first: all[0] ?? positiveOf(cable, lookup), count: Math.max(all.length, 1) }
})

/** All of them, in the order of the file. */
export function cablesBeside(cable: Block, lookup: Lookup): readonly BlockId[] {
  const circuit = circuitAt(cable, lookup)
  return circuit
    ? runsBeside(circuit, positiveOf(cable, lookup)).flatMap((run) => circuit.runs[run]?.cable ?? [])
    : []
}

function runsBeside({ runs, runOf, beside }: DcCircuit, cable: BlockId): readonly number[] {
  const itself = runs[runOf.get(cable) ?? -1]
  return (itself && beside.get(besideWhat(itself))) ?? []
}

/** What reaches a cable, or a piece of it, from each of its ends; undefined where it carries no DC, or the cable that a device is in could not be read. */
export const letThroughTo: (cable: Block, lookup: Lookup) => readonly FedFrom[] | undefined = plan(
  (cable, lookup) => {
    const circuit = circuitAt(cable, lookup)
    if (!circuit || lookup.ofFile(isUnclear)) return undefined
    const { first } = besideOf(cable, lookup)
    if (first !== idOf(cable)) return letThroughTo(lookup.blockOf(first), lookup)
    return fedFrom(first, circuit)
  },
)

/** What comes to one end from the other is not counted, nor what comes back through cables beside it. */
function fedFrom(cable: BlockId, dc: DcCircuit): readonly FedFrom[] {
  const { circuit, limits, unprotected, island, runs, runOf } = dc
  const run = runs[runOf.get(cable) ?? -1]
  if (!run) return []
  const without = new Set(runsBeside(dc, cable))
  const ends = run.ends.map((end) => letThrough(circuit, end, without)) as [LetThrough, LetThrough]
  /** What comes through some devices of the cable; the one nearest the piece where there is a choice. */
  const through = ({ amps, limitedBy }: LetThrough, inside: readonly Device[]): FedFrom => {
    const own = smallest(inside)
    return own && own.rating <= amps
      ? { amps: own.rating, limitedBy: [own], isLead: false }
      : { amps, limitedBy: limitedBy.flatMap((link) => limits[link] ?? []), isLead: false }
  }
  return (island.of.get(cable) ?? []).flatMap((piece) => {
    const { before = 0 } = island.conductors[piece] ?? {}
    const lead = unprotected.conductors.get(piece)
    const both = [
      through(ends[0], run.devices.slice(0, before)),
      through(ends[1], run.devices.slice(before).toReversed()),
    ]
    return both.map((fed): FedFrom => {
      if (Number.isFinite(fed.amps) || !lead?.isLead) return fed
      const behind = fusesBehind(lead.far, dc)
      return { amps: behind.reduce((sum, { rating }) => sum + rating, 0), limitedBy: behind, isLead: true }
    })
  })
}

/** The fuses and breakers that a lead leads to. */
function fusesBehind(far: Place, { unprotected: { onward }, fusesAt }: DcCircuit): readonly Limit[] {
  const places = new Set([far])
  for (const place of places) for (const next of onward.get(place) ?? []) places.add(next)
  return [...new Set([...places].flatMap((place) => fusesAt.get(place) ?? []))]
}

/** The batteries that DC cables join to a cable, through devices and other batteries too: all of them feed a short circuit there. */
export const batteriesJoined = (cable: Block, lookup: Lookup): readonly BlockId[] =>
  circuitAt(cable, lookup)?.island.batteries.map(({ battery }) => battery) ?? []

/** The converters at whose output a cable is fed, where no battery is; none for any other cable. */
export function convertersFeeding(cable: Block, lookup: Lookup): readonly Block[] {
  const { batteries, feeders } = circuitAt(cable, lookup)?.island ?? { batteries: [], feeders: [] }
  return batteries.length > 0
    ? []
    : feeders.flatMap(({ kind, feeder }) => (kind === 'converter' ? lookup.blockOf(feeder) : []))
}

/** Whether a DC cable is fed without any fuse or breaker before it and is not only a lead to one that is at most `longestLead` (m) from the battery;
 * undefined where what it joins is not known. */
export function isFedUnprotected(cable: Block, longestLead: number, lookup: Lookup): boolean | undefined {
  const circuit = circuitAt(cable, lookup)
  if (!circuit || lookup.ofFile(isUnclear)) return undefined
  const pieces = circuit.island.of.get(positiveOf(cable, lookup)) ?? []
  return pieces.some((piece) => {
    const fed = circuit.unprotected.conductors.get(piece)
    // What leads to a fuse in the cable itself is judged by the place of that fuse.
    return fed && (!fed.isLead || (pieces.length === 1 && !reaches(longestLead, fed.reach)))
  })
}

const cablesAt = plan(
  (device: Block, lookup: Lookup): CablesAt =>
    lookup.ofFile(topologyOfFile).atDevices.get(idOf(device)) ?? { supply: [], outgoing: [] },
)

/** The longest conductor from a battery to a fuse or breaker, m, before which there is no other; undefined where none comes to it. */
export const leadTo = plan((device: Block, lookup: Lookup): number | undefined => {
  const around = cablesAround(device, lookup).map(lookup.blockOf)
  const [circuit] = around.flatMap((cable) => circuitAt(cable, lookup) ?? [])
  return circuit?.leadTo.get(idOf(device))
})

/** The cables at a device, or the one that it is in. */
function cablesAround(device: Block, lookup: Lookup): readonly BlockId[] {
  const { supply, outgoing, within } = cablesOfDevice(device, lookup)
  return [...outgoing, ...supply, ...(within ? [within] : [])]
}

/** The DC cables at a fuse, breaker or switch, and the one that it is in. */
export const cablesOfDevice = (device: Block, lookup: Lookup): CablesAt & { readonly within?: BlockId } => {
  const within = lookup.referred('in')
  return { ...cablesAt(device, lookup), ...(within && { within: idOf(within) }) }
}

/** The cable that carries what a device does: the one it is in, else the only one at its outgoing side, else the only one before it. */
export function cableOf(device: Block, lookup: Lookup): Block | undefined {
  if (device.facts.has('in') || device.unread.has('in')) return lookup.referred('in')
  const { supply, outgoing } = cablesAt(device, lookup)
  const only = [outgoing, supply].find((side) => side.length === 1)
  return only?.map(lookup.blockOf)[0]
}

/** A cable in the circuit of a device: the one that carries what it does, else any at it. */
export function circuitCableOf(device: Block, lookup: Lookup): Block | undefined {
  const known = cableOf(device, lookup)
  if (known || device.unread.has('in')) return known
  const { supply, outgoing } = cablesAt(device, lookup)
  return [...outgoing, ...supply].map(lookup.blockOf)[0]
}

/** The parts at which cables end, or that devices are bolted to; undefined among them where an end could not be read. */
const joinedInFile = ({ ofFile }: FileLookup): ReadonlySet<BlockId | undefined> => {
  const { ended, switches } = ofFile(partsOfFile)
  return new Set([
    ...ended,
    ...switches.flatMap(({ from, to }) => [from, to].flatMap((one) => one?.at ?? [])),
  ])
}

/** Whether a cable ends at a part, or a device is bolted to it; true also where that cannot be told. */
export function isReached(part: Block, lookup: Lookup): boolean {
  const joined = lookup.ofFile(joinedInFile)
  return joined.has(idOf(part)) || joined.has(undefined)
}

/** Whether a fuse, breaker or switch is in a cable or bolted to a part, or a cable ends at it; true also where that cannot be told. */
export const isPlaced = (device: Block, lookup: Lookup): boolean =>
  ['in', 'from', 'to'].some((fact) => device.facts.has(fact) || device.unread.has(fact)) ||
  isReached(device, lookup)
