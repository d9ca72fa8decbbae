import { getOrInsert } from '../../../common/get-or-insert.ts'
import {
  type Circuit,
  type CircuitLink,
  circuitOf,
  type LetThrough,
  letThrough,
} from '../../../engineering/electrical/let-through.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import { type BlockId, between } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { endsOf, systemOf } from './cable-circuit.ts'

/** A DC cable by its two ends, in the order from, to. A device with cables at it has a supply side and an outgoing side. */
interface DcCable {
  readonly cable: BlockId
  readonly ends: readonly [string, string]
  /** Devices without cables that are in it. */
  readonly within: readonly Device[]
}

interface Device {
  readonly device: BlockId
  /** A. A rating that is not known lets nothing through: what is found holds whatever it turns out to be. */
  readonly rating: number
}

/** What a drive, or the top of the file, has of it. */
interface Parts {
  readonly cables: readonly CableEnds[]
  readonly devices: readonly DeviceAsSaid[]
  readonly batteries: readonly BlockId[]
}

interface CableEnds {
  readonly cable: BlockId
  readonly ends: readonly [CableEnd, CableEnd]
}

interface CableEnd {
  readonly at: BlockId
  readonly kind: string
}

interface DeviceAsSaid extends Device {
  readonly protects: BlockId | undefined
  /** What it protects could not be read: it may be any cable. */
  readonly isUnread: boolean
}

function partsOf(
  { cables, devices, batteries }: Readonly<Record<keyof Parts, readonly Block[]>>,
  from: (block: Block) => Lookup,
): Parts {
  return {
    cables: cables.flatMap((cable) => dcEnds(cable, from(cable)) ?? []),
    devices: devices.map((block) => {
      const protects = from(block).referred('protects')
      return {
        device: idOf(block),
        rating: factOf(block, 'protection.rating')?.value ?? 0,
        protects: protects && idOf(protects),
        isUnread: block.unread.has('protects'),
      }
    }),
    batteries: batteries.map(idOf),
  }
}

const partsOfDrive = plan(
  (drive, { from }): Parts =>
    partsOf(
      {
        cables: childrenOf(drive, 'cable'),
        devices: childrenOf(drive, 'protection'),
        batteries: childrenOf(drive, 'battery'),
      },
      from,
    ),
)
const sharedParts = ({ ofKind, from }: FileLookup): Parts =>
  partsOf({ cables: ofKind('cable'), devices: ofKind('protection'), batteries: ofKind('battery') }, from)

/** A DC circuit, as far as overcurrent devices part it. */
interface DcCircuit {
  readonly circuit: Circuit
  /** The device that each link is, or that limits it. */
  readonly limits: readonly (BlockId | undefined)[]
  /** The first links. */
  readonly cables: readonly DcCable[]
  readonly linkOf: ReadonlyMap<BlockId, number>
  /** Links of cables by the places that they join: they carry one current together. A cable with a device in it is by itself. */
  readonly beside: ReadonlyMap<string, readonly number[]>
  readonly batteries: readonly BlockId[]
}

interface Circuits {
  /** Each by the cables in it. */
  readonly of: ReadonlyMap<BlockId, DcCircuit>
  /** The cable of a device could not be read: it may be in any. */
  readonly isUnclear: boolean
  readonly atDevices: ReadonlyMap<BlockId, CablesAt>
}

/** The DC cables at the two sides of a device. */
interface CablesAt {
  readonly supply: readonly BlockId[]
  readonly outgoing: readonly BlockId[]
}

/** No id has this in it. */
const part = `${between}${between}`
const supplySide = (device: BlockId): string => `${device}${part}supply`
const outgoingSide = (device: BlockId): string => `${device}${part}outgoing`
/** A device itself, in place of one of its sides. */
const wherever = (end: string): BlockId => (end.split(part, 1)[0] ?? '') as BlockId

function circuitsOfFile({ ofKind, ofFile, from }: FileLookup): Circuits {
  const parts = [...ofKind('drive').map((drive) => partsOfDrive(drive, from(drive))), ofFile(sharedParts)]
  const dc = parts.flatMap(({ cables }) => cables)
  const devices = parts.flatMap((one) => one.devices)
  const batteries = parts.flatMap((one) => one.batteries)
  const at = cablesAtDevices(dc)
  const place = (cable: BlockId, end: CableEnd): string => {
    if (end.kind !== 'protection') return end.at
    return at.get(end.at)?.supply.includes(cable) ? supplySide(end.at) : outgoingSide(end.at)
  }
  const within = new Map<BlockId, Device[]>()
  for (const { device, rating, protects } of devices)
    if (protects && !at.has(device)) add(within, protects, { device, rating })
  const cables = dc.map(
    ({ cable, ends }): DcCable => ({
      cable,
      ends: [place(cable, ends[0]), place(cable, ends[1])],
      within: within.get(cable) ?? [],
    }),
  )
  const ratings = new Map(devices.map(({ device, rating }) => [device, rating]))
  const fromBatteries = new Set(batteries)
  const of = new Map<BlockId, DcCircuit>()
  for (const joined of joinedCables(cables)) {
    const places = new Set(joined.flatMap(({ ends }) => ends.map(wherever)))
    const atEnds = [...places].flatMap((device) => {
      const rating = ratings.get(device)
      return rating === undefined ? [] : { device, rating }
    })
    const circuit = dcCircuit(
      joined,
      atEnds,
      [...places].filter((one) => fromBatteries.has(one)),
    )
    for (const { cable } of joined) of.set(cable, circuit)
  }
  const isUnclear = devices.some(({ device, isUnread }) => isUnread && !at.has(device))
  return { of, isUnclear, atDevices: at }
}

function dcCircuit(
  cables: readonly DcCable[],
  atEnds: readonly Device[],
  batteries: readonly BlockId[],
): DcCircuit {
  const links: CircuitLink[] = []
  const limits: (BlockId | undefined)[] = []
  const link = (ends: readonly [string, string], device?: Device) => {
    links.push(device ? { ends, rating: device.rating } : { ends })
    limits.push(device?.device)
  }
  for (const { ends, within } of cables) link(ends, smallest(within))
  for (const one of atEnds) link([supplySide(one.device), outgoingSide(one.device)], one)
  const beside = new Map<string, number[]>()
  for (const [i, one] of cables.entries()) add(beside, placesOf(one), i)
  const linkOf = new Map(cables.map(({ cable }, i) => [cable, i]))
  return { circuit: circuitOf(links, batteries), limits, cables, linkOf, beside, batteries }
}

const placesOf = ({ cable, ends, within }: DcCable): string =>
  within.length > 0 ? cable : [...ends].sort().join(part)

const add = <K, V>(to: Map<K, V[]>, key: K, value: V): void =>
  void getOrInsert(to, key, (): V[] => []).push(value)

/** Cables in groups that hang together, through devices and batteries too. */
function joinedCables(cables: readonly DcCable[]): readonly (readonly DcCable[])[] {
  const at = new Map<string, DcCable[]>()
  for (const cable of cables) for (const end of cable.ends.map(wherever)) add(at, end, cable)
  const seen = new Set<DcCable>()
  return cables.flatMap((first) => {
    if (seen.has(first)) return []
    const group = new Set([first])
    for (const { ends } of group)
      for (const end of ends) for (const next of at.get(wherever(end)) ?? []) group.add(next)
    for (const cable of group) seen.add(cable)
    return [[...group]]
  })
}

/** Undefined where it carries no DC, or an end is not known. */
function dcEnds(cable: Block, lookup: Lookup): CableEnds | undefined {
  try {
    const [from, to] = endsOf(cable, lookup).map((end) => end && { at: idOf(end), kind: end.kind })
    return from && to && systemOf(cable, lookup) === 'dc'
      ? { cable: idOf(cable), ends: [from, to] }
      : undefined
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** Those written `to` a device are at its supply side. Where all at it are written one way, those from a battery, else the first. */
function cablesAtDevices(cables: readonly CableEnds[]): ReadonlyMap<BlockId, CablesAt> {
  const at = new Map<BlockId, (CableEnds & { readonly isFrom: boolean })[]>()
  for (const one of cables)
    for (const [which, end] of one.ends.entries())
      if (end.kind === 'protection') add(at, end.at, { ...one, isFrom: which === 0 })
  return new Map(
    [...at].map(([device, all]) => {
      const supply = all.filter(({ isFrom }) => !isFrom)
      const isOneWay = supply.length === 0 || supply.length === all.length
      const live = all.filter(({ ends }) => ends.some(({ kind }) => kind === 'battery'))
      const atSupply = new Set(isOneWay ? (live.length > 0 ? live : all.slice(0, 1)) : supply)
      const ids = (some: readonly CableEnds[]) => some.map(({ cable }) => cable)
      const outgoing = all.filter((one) => !atSupply.has(one))
      return [device, { supply: ids([...atSupply]), outgoing: ids(outgoing) }]
    }),
  )
}

/** What the overcurrent devices of the file let through to a DC cable from one of its ends, A, and which of them limit it. */
export interface FedFrom {
  /** 0: from its `from` end. */
  readonly end: 0 | 1
  readonly amps: number
  readonly limitedBy: readonly BlockId[]
}

/** The circuit that a cable is in. It is the same for whoever asks as long as nothing in it is another. */
const circuitAt = plan((cable: Block, lookup: Lookup): DcCircuit | undefined =>
  lookup.ofFile(circuitsOfFile).of.get(idOf(cable)),
)

const isUnclear = ({ ofFile }: FileLookup): boolean => ofFile(circuitsOfFile).isUnclear

/** The DC cables that join the same places as a cable, itself among them, carry one current together. */
interface Beside {
  /** The first of them: what holds for all is worked out for that one. */
  readonly first: BlockId
  readonly count: number
}

export const besideOf = plan((cable: Block, lookup: Lookup): Beside => {
  const id = idOf(cable)
  const circuit = circuitAt(cable, lookup)
  const links = circuit ? linksBeside(circuit, id) : []
  return { first: circuit?.cables[links[0] ?? -1]?.cable ?? id, count: Math.max(links.length, 1) }
})

/** All of them, asked of the first. */
export const cablesBeside = (first: Block, lookup: Lookup): readonly BlockId[] => {
  const circuit = circuitAt(first, lookup)
  return circuit
    ? linksBeside(circuit, idOf(first)).flatMap((link) => circuit.cables[link]?.cable ?? [])
    : [idOf(first)]
}

function linksBeside({ cables, linkOf, beside }: DcCircuit, id: BlockId): readonly number[] {
  const itself = cables[linkOf.get(id) ?? -1]
  return (itself && beside.get(placesOf(itself))) ?? []
}

/** What reaches a cable from each of its ends; undefined where it carries no DC, or the cable that a device protects could not be read. */
export const letThroughTo: (cable: Block, lookup: Lookup) => readonly FedFrom[] | undefined = plan(
  (cable, lookup) => {
    const circuit = circuitAt(cable, lookup)
    if (!circuit || lookup.ofFile(isUnclear)) return undefined
    const { first } = besideOf(cable, lookup)
    if (first === idOf(cable)) return fedFrom(first, circuit)
    const fed = letThroughTo(lookup.blockOf(first), lookup)
    const [itself, other] = [idOf(cable), first].map((id) => circuit.cables[circuit.linkOf.get(id) ?? -1])
    return itself?.ends[0] === other?.ends[0]
      ? fed
      : fed?.map((from): FedFrom => ({ ...from, end: from.end === 0 ? 1 : 0 })).toReversed()
  },
)

/** What comes to one end from the other is not counted, nor what comes back through cables beside it. */
function fedFrom(id: BlockId, dc: DcCircuit): readonly FedFrom[] {
  const { circuit, limits } = dc
  const itself = dc.cables[dc.linkOf.get(id) ?? -1]
  if (!itself) return []
  const without = new Set(linksBeside(dc, id))
  const outside = itself.ends.map((end) => letThrough(circuit, end, without)) as [LetThrough, LetThrough]
  const isFromBattery = itself.ends.map((end) => circuit.sources.has(end))
  const own = devicesAt(itself.within, outside, isFromBattery[1] === true && !isFromBattery[0])
  return ([0, 1] as const).map((end) => {
    const { amps, limitedBy } = outside[end]
    const device = own[end]
    return device && device.rating <= amps
      ? { end, amps: device.rating, limitedBy: [device.device] }
      : { end, amps, limitedBy: limitedBy.flatMap((link) => limits[link] ?? []) }
  })
}

/** The devices in a cable at its two ends. If current comes from both, the first of several is where more comes from, of two alike at the battery. Of
 * those in a row the smallest counts. */
function devicesAt(
  within: readonly Device[],
  [from, to]: readonly [LetThrough, LetThrough],
  isBatteryAtTo: boolean,
): readonly [Device | undefined, Device | undefined] {
  const all = smallest(within)
  if (to.amps === 0) return [all, undefined]
  if (from.amps === 0) return [undefined, all]
  const [first, ...others] = within
  const isFirstAtTo = to.amps > from.amps || (to.amps === from.amps && isBatteryAtTo)
  return isFirstAtTo ? [smallest(others), first] : [first, smallest(others)]
}

const smallest = (devices: readonly Device[]): Device | undefined =>
  devices.reduce<Device | undefined>(
    (least, one) => (least && least.rating <= one.rating ? least : one),
    undefined,
  )

/** The batteries that DC cables join to a cable, through devices and other batteries too: all of them feed a short circuit there. */
export const batteriesJoined = (cable: Block, lookup: Lookup): readonly BlockId[] =>
  circuitAt(cable, lookup)?.batteries ?? []

const cablesAt = plan(
  (device: Block, lookup: Lookup): CablesAt =>
    lookup.ofFile(circuitsOfFile).atDevices.get(idOf(device)) ?? { supply: [], outgoing: [] },
)

/** The cable that carries what a device does: the one it names with `protects`, else the only one at its outgoing side, else the only one before it. */
export function cableOf(device: Block, lookup: Lookup): Block | undefined {
  if (device.facts.has('protects') || device.unread.has('protects')) return lookup.referred('protects')
  const { supply, outgoing } = cablesAt(device, lookup)
  const only = [outgoing, supply].find((side) => side.length === 1)
  return only?.map(lookup.blockOf)[0]
}

/** A cable in the circuit of a device: the one that carries what it does, else any at it. */
export function circuitCableOf(device: Block, lookup: Lookup): Block | undefined {
  const known = cableOf(device, lookup)
  if (known || device.unread.has('protects')) return known
  const { supply, outgoing } = cablesAt(device, lookup)
  return [...outgoing, ...supply].map(lookup.blockOf)[0]
}
