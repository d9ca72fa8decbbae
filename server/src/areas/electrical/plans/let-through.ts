import { type CircuitLink, type LetThrough, letThrough } from '../../../engineering/electrical/let-through.ts'
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
interface Circuit {
  readonly cables: readonly DcCable[]
  /** Devices that cables end at. */
  readonly atEnds: readonly Device[]
  /** Devices in a cable, by the cable that they are in. */
  readonly within: ReadonlyMap<BlockId, readonly Device[]>
  readonly batteries: readonly BlockId[]
}

interface Circuits {
  /** Each by the cables in it. */
  readonly of: ReadonlyMap<BlockId, Circuit>
  /** The cable of a device could not be read: it may be in any. */
  readonly isUnclear: boolean
}

/** No id has this in it. */
const part = `${between}${between}`
const supplySide = (device: BlockId): string => `${device}${part}supply`
const outgoingSide = (device: BlockId): string => `${device}${part}outgoing`
const middleOf = (cable: BlockId): string => `${cable}${part}middle`
/** A device itself, in place of one of its sides. */
const wherever = (end: string): string => end.split(part, 1)[0] ?? ''

function circuitsOfFile({ ofKind, ofFile, from }: FileLookup): Circuits {
  const parts = [...ofKind('drive').map((drive) => partsOfDrive(drive, from(drive))), ofFile(sharedParts)]
  const dc = parts.flatMap(({ cables }) => cables)
  const devices = parts.flatMap((one) => one.devices)
  const batteries = parts.flatMap((one) => one.batteries)
  const at = cablesAtDevices(dc)
  const place = (cable: BlockId, end: CableEnd): string => {
    if (end.kind !== 'protection') return end.at
    return at.get(end.at)?.includes(cable) ? supplySide(end.at) : outgoingSide(end.at)
  }
  const within = new Map<BlockId, Device[]>()
  for (const { device, rating, protects } of devices)
    if (protects && !at.has(device))
      within.set(protects, [...(within.get(protects) ?? []), { device, rating }])
  const cables = dc.map(
    ({ cable, ends }): DcCable => ({ cable, ends: [place(cable, ends[0]), place(cable, ends[1])] }),
  )
  const of = new Map<BlockId, Circuit>()
  for (const joined of joinedCables(cables)) {
    const places = new Set(joined.flatMap(({ ends }) => ends.map(wherever)))
    const circuit = {
      cables: joined,
      atEnds: devices.flatMap(({ device, rating }) => (places.has(device) ? { device, rating } : [])),
      within: new Map(joined.map(({ cable }) => [cable, within.get(cable) ?? []])),
      batteries: batteries.filter((battery) => places.has(battery)),
    }
    for (const { cable } of joined) of.set(cable, circuit)
  }
  return { of, isUnclear: devices.some(({ device, isUnread }) => isUnread && !at.has(device)) }
}

/** Cables in groups that hang together, through devices and batteries too. */
function joinedCables(cables: readonly DcCable[]): readonly (readonly DcCable[])[] {
  const at = new Map<string, DcCable[]>()
  for (const cable of cables)
    for (const end of cable.ends.map(wherever)) at.set(end, [...(at.get(end) ?? []), cable])
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

/** The cables at the supply side of each device: those written `to` it. Where all at a device are written one way, those from a battery, else the
 * first. */
function cablesAtDevices(cables: readonly CableEnds[]): ReadonlyMap<BlockId, readonly BlockId[]> {
  const at = new Map<BlockId, (CableEnds & { readonly isFrom: boolean })[]>()
  for (const one of cables)
    for (const [which, end] of one.ends.entries())
      if (end.kind === 'protection')
        at.set(end.at, [...(at.get(end.at) ?? []), { ...one, isFrom: which === 0 }])
  return new Map(
    [...at].map(([device, all]) => {
      const supply = all.filter(({ isFrom }) => !isFrom)
      const isOneWay = supply.length === 0 || supply.length === all.length
      const live = all.filter(({ ends }) => ends.some(({ kind }) => kind === 'battery'))
      return [
        device,
        (isOneWay ? (live.length > 0 ? live : all.slice(0, 1)) : supply).map(({ cable }) => cable),
      ]
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

/** Whether two cables join the same places: they carry one current together. */
const isBeside = (one: DcCable, other: DcCable): boolean =>
  one.ends.every((end) => other.ends.includes(end)) && other.ends.every((end) => one.ends.includes(end))

/** The DC cables that join the same places as this one, itself among them. */
export const cablesBeside = plan((cable: Block, lookup: Lookup): readonly BlockId[] => {
  const id = idOf(cable)
  const { cables = [] } = lookup.ofFile(circuitsOfFile).of.get(id) ?? {}
  const itself = cables.find((one) => one.cable === id)
  return itself ? cables.filter((one) => isBeside(one, itself)).map((one) => one.cable) : [id]
})

/** What reaches a cable from each of its ends; undefined where it carries no DC, or the cable that a device protects could not be read. */
export const letThroughTo = plan((cable: Block, lookup: Lookup): readonly FedFrom[] | undefined => {
  const { of, isUnclear } = lookup.ofFile(circuitsOfFile)
  const id = idOf(cable)
  const circuit = of.get(id)
  if (!circuit || isUnclear) return undefined
  return ([0, 1] as const).map((end) => fedFrom(circuit, id, end))
})

/** The cable itself ends in its middle: what comes from its other end is not counted, nor what comes back through those beside it. */
function fedFrom({ cables, atEnds, within, batteries }: Circuit, id: BlockId, end: 0 | 1): FedFrom {
  const links: CircuitLink[] = []
  const devices: (BlockId | undefined)[] = []
  const link = (ends: readonly [string, string], device?: Device) => {
    links.push(device ? { ends, rating: device.rating } : { ends })
    devices.push(device?.device)
  }
  for (const one of atEnds) link([supplySide(one.device), outgoingSide(one.device)], one)
  const itself = cables.find(({ cable }) => cable === id)
  for (const one of cables) {
    if (one !== itself && itself && isBeside(one, itself)) continue
    const inside = deviceAt(one, { cables, within, batteries })
    const middle = middleOf(one.cable)
    for (const which of [0, 1] as const)
      if (one !== itself || which === end) link([one.ends[which], middle], inside[which])
  }
  const { amps, limitedBy }: LetThrough = letThrough(links, batteries, middleOf(id))
  return { end, amps, limitedBy: limitedBy.flatMap((i) => devices[i] ?? []) }
}

/** The devices in a cable at its two ends. One is at the end that the current comes from, the first of several at the `from` end if it comes from
 * both; of those in a row the smallest counts. */
function deviceAt(
  { cable, ends }: DcCable,
  circuit: Pick<Circuit, 'cables' | 'within' | 'batteries'>,
): readonly [Device | undefined, Device | undefined] {
  const devices = circuit.within.get(cable) ?? []
  if (devices.length === 0) return [undefined, undefined]
  const isFed = ends.map((end) => isLive(end, cable, circuit))
  if (isFed[1] && !isFed[0]) return [undefined, smallest(devices)]
  if (!isFed[1] || !isFed[0]) return [smallest(devices), undefined]
  return [devices[0], smallest(devices.slice(1))]
}

const smallest = (devices: readonly Device[]): Device | undefined =>
  devices.reduce<Device | undefined>(
    (least, one) => (least && least.rating <= one.rating ? least : one),
    undefined,
  )

/** Whether cables lead from a battery to a place without this one, through devices or not. */
function isLive(
  place: string,
  but: BlockId,
  { cables, batteries }: Pick<Circuit, 'cables' | 'batteries'>,
): boolean {
  const links = cables
    .filter(({ cable }) => cable !== but)
    .map(({ ends: [from, to] }) => ({ ends: [wherever(from), wherever(to)] as const }))
  return letThrough(links, batteries, wherever(place)).amps > 0
}

/** The batteries that DC cables join to a cable, through devices and other batteries too: all of them feed a short circuit there. */
export const batteriesJoined = (cable: Block, lookup: Lookup): readonly BlockId[] =>
  lookup.ofFile(circuitsOfFile).of.get(idOf(cable))?.batteries ?? []
