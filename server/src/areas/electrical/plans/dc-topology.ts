import { getOrInsert } from '../../../common/get-or-insert.ts'
import { SamePlaces } from '../../../common/same-places.ts'
import { type BlockId, between } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { type Joined, stringsOfFile } from '../../common/battery-string.ts'
import type { Pole } from './cable-pole.ts'
import {
  type DcCable,
  type DcParts,
  type Feeder,
  isSwitch,
  type PartEnd,
  partsOfFile,
  type Switch,
} from './dc-parts.ts'

/** Where conductors and devices meet: a part, or one of its two sides. All at one place is at one voltage. */
export type Place = string

/** A DC cable, or a piece of one that a device is in. */
export interface Conductor {
  readonly cable: BlockId
  readonly ends: readonly [Place, Place]
  /** m; undefined where it is not known. */
  readonly length: number | undefined
  /** How many devices are in the cable before it, from the `from` end. */
  readonly before: number
}

/** A fuse, breaker or switch between its two sides. */
export interface Device extends Pick<Switch, 'device' | 'kind' | 'rating'> {
  /** The cable that it is in, with nothing else at its two sides. Those of one cable are in its order. */
  readonly within: BlockId | undefined
  readonly ends: readonly [Place, Place]
}

/** What conductors and devices join. */
export interface Island {
  readonly conductors: readonly Conductor[]
  readonly devices: readonly Device[]
  /** Of a string the first battery. */
  readonly batteries: readonly { readonly battery: BlockId; readonly place: Place }[]
  readonly feeders: readonly (Feeder & { readonly place: Place })[]
  /** Where something is fed, or feeds, through a cable or a device: controllers, motors, loads, chargers, converters. */
  readonly sinks: readonly { readonly part: BlockId; readonly place: Place }[]
  readonly busbars: readonly { readonly part: BlockId; readonly place: Place }[]
  /** Indices of conductors, in the order of the cable. */
  readonly of: ReadonlyMap<BlockId, readonly number[]>
}

export interface Topology {
  /** Each by the cables and devices in it. */
  readonly islands: ReadonlyMap<BlockId, Island>
  /** The cable that a fuse or breaker is in could not be read: it may be in any. */
  readonly isUnclear: boolean
  /** Of devices at which cables end. */
  readonly atDevices: ReadonlyMap<BlockId, CablesAt>
}

/** The DC cables at the two sides of a device. */
export interface CablesAt {
  readonly supply: readonly BlockId[]
  readonly outgoing: readonly BlockId[]
}

/** No id has this in it. */
const part = `${between}${between}`
const side = (device: BlockId, which: 'supply' | 'outgoing' | 'input' | 'output' | 'cells'): Place =>
  `${device}${part}${which}`

/** The parts that cables join, as places, conductors between them and devices. */
export function topologyOfFile({ ofFile }: FileLookup): Topology {
  const parts = ofFile(partsOfFile)
  const joints = jointsOf(parts, 'positive')
  // A device may be in the negative pole alone.
  const sides = new Map([...sidesOfSwitches(jointsOf(parts, 'negative')), ...sidesOfSwitches(joints)])
  const wired = wire(parts, joints, sides, ofFile(stringsOfFile))
  const islands = new Map<BlockId, Island>()
  for (const island of islandsOf(wired)) {
    for (const { cable } of island.conductors) islands.set(cable, island)
    for (const { device } of island.devices) islands.set(device, island)
  }
  return {
    islands,
    isUnclear: parts.switches.some(({ device, isUnread }) => isUnread && !sides.has(device)),
    atDevices: new Map(
      [...sides].map(([device, { supply, outgoing }]) => [
        device,
        { supply: cablesOf(supply), outgoing: cablesOf(outgoing) },
      ]),
    ),
  }
}

/** What joins two parts: a cable, or a device that is bolted on. */
interface Joint {
  readonly ends: readonly [PartEnd, PartEnd]
  readonly cable?: DcCable
}

const cablesOf = (joints: ReadonlySet<Joint>): readonly BlockId[] =>
  [...joints].flatMap(({ cable }) => cable?.cable ?? [])

/** The circuit is that of the positive pole: a cable of the negative carries what the one beside it does. */
const jointsOf = ({ cables, switches }: DcParts, pole: Pole): readonly Joint[] => [
  ...cables.flatMap((cable): readonly Joint[] =>
    (cable.pole ?? pole) === pole ? [{ ends: cable.ends, cable }] : [],
  ),
  ...switches.flatMap(({ device, kind, from, to }): readonly Joint[] => {
    const itself = { at: device, kind }
    return [
      ...(from ? [{ ends: [from, itself] as const }] : []),
      ...(to ? [{ ends: [itself, to] as const }] : []),
    ]
  }),
]

interface Sides {
  readonly supply: ReadonlySet<Joint>
  readonly outgoing: ReadonlySet<Joint>
}

const isSink = (kind: string): boolean => kind !== 'battery' && kind !== 'busbar' && !isSwitch(kind)

/** What ends at the two sides of each switch. A joint written `to` it is at its supply side. Where all at it are written one way, those from a battery
 * are, else the first. */
function sidesOfSwitches(joints: readonly Joint[]): ReadonlyMap<BlockId, Sides> {
  const at = new Map<BlockId, { readonly joint: Joint; readonly isFrom: boolean }[]>()
  for (const joint of joints)
    for (const [which, end] of joint.ends.entries())
      if (isSwitch(end.kind))
        getOrInsert(at, end.at, (): { joint: Joint; isFrom: boolean }[] => []).push({
          joint,
          isFrom: which === 0,
        })
  return new Map(
    [...at].map(([device, all]) => {
      const written = all.filter(({ isFrom }) => !isFrom)
      const isOneWay = written.length === 0 || written.length === all.length
      const live = all.filter(({ joint }) => joint.ends.some(({ kind }) => kind === 'battery'))
      const supply = new Set(
        (isOneWay ? (live.length > 0 ? live : all.slice(0, 1)) : written).map(({ joint }) => joint),
      )
      const outgoing = new Set(all.map(({ joint }) => joint).filter((joint) => !supply.has(joint)))
      return [device, { supply, outgoing }]
    }),
  )
}

type Wired = Omit<Island, 'of'>

/** Every cable as conductors between places, cut where a device is in it. */
function wire(
  { cables, switches, batteries, feeders }: DcParts,
  joints: readonly Joint[],
  sides: ReadonlyMap<BlockId, Sides>,
  strings: ReadonlyMap<BlockId, Joined>,
): Wired {
  const same = new SamePlaces()
  const placeAt = (joint: Joint, which: 0 | 1): Place => {
    const { at, kind } = joint.ends[which]
    if (kind === 'converter') return side(at, which === 0 ? 'output' : 'input')
    if (!isSwitch(kind)) return at
    return side(at, sides.get(at)?.supply.has(joint) ? 'supply' : 'outgoing')
  }
  const within = new Map<BlockId, Switch[]>()
  for (const one of switches)
    if (one.in && !sides.has(one.device)) getOrInsert(within, one.in, (): Switch[] => []).push(one)
  const conductors: Conductor[] = []
  const sinks = new Map<Place, BlockId>()
  const busbars = new Set<BlockId>()
  const placed: { one: Switch; within: BlockId | undefined }[] = switches
    .filter(({ device }) => sides.has(device))
    .map((one) => ({ one, within: undefined }))
  const lay = (cable: DcCable, start: Place, end: Place) => {
    let from = start
    let done = 0
    let before = 0
    const piece = (to: Place, length: number | undefined) => {
      if (length === 0 && cable.pole !== 'series') same.join(from, to)
      // What lies between the batteries of a string is no distance from them.
      else
        conductors.push({
          cable: cable.cable,
          ends: [from, to],
          length: cable.pole === 'series' ? 0 : length,
          before,
        })
    }
    const inside = alongCable(within.get(cable.cable) ?? [], cable)
    for (const { one, at } of inside) {
      piece(side(one.device, 'supply'), Number.isFinite(at) ? at - done : undefined)
      from = side(one.device, 'outgoing')
      done = at
      before += 1
      placed.push({ one, within: cable.cable })
    }
    const isAtEnd =
      inside.length > 0 && (cable.length === undefined ? !Number.isFinite(done) : done >= cable.length)
    piece(end, isAtEnd ? 0 : cable.length === undefined ? undefined : cable.length - done)
  }
  for (const joint of joints) {
    const [from, end] = [placeAt(joint, 0), placeAt(joint, 1)]
    for (const [i, place] of [from, end].entries()) {
      const { at, kind } = joint.ends[i as 0 | 1]
      if (isSink(kind)) sinks.set(place, at)
      if (kind === 'busbar') busbars.add(at)
    }
    if (joint.cable) lay(joint.cable, from, end)
    else same.join(from, end)
  }
  const inSeries = placesInSeries(strings)
  for (const [battery, { terminals }] of inSeries) same.join(battery, terminals)
  for (const cable of cables) {
    const [from, to] = cable.pole === 'series' ? cable.ends.map(({ at }) => inSeries.get(at)?.behind) : []
    if (from && to) lay(cable, from, to)
  }
  const ends = ([one, other]: readonly [Place, Place]) => [same.of(one), same.of(other)] as const
  return {
    conductors: conductors.map((one) => ({ ...one, ends: ends(one.ends) })),
    devices: placed.map(({ one: { device, kind, rating }, within }) => ({
      device,
      kind,
      rating,
      within,
      ends: ends([side(device, 'supply'), side(device, 'outgoing')]),
    })),
    batteries: batteries.flatMap((battery) => {
      const string = inSeries.get(battery)
      const place = string ? string.cells : battery
      return place === undefined ? [] : [{ battery, place: same.of(place) }]
    }),
    sinks: [...sinks].map(([place, part]) => ({ part, place: same.of(place) })),
    busbars: [...busbars].map((part) => ({ part, place: same.of(part) })),
    feeders: feeders.map((one) => ({
      ...one,
      place: same.of(one.kind === 'converter' ? side(one.feeder, 'output') : one.feeder),
    })),
  }
}

/** Where a battery is of a string. */
interface InSeries {
  /** What the string gives; of its first battery only. */
  readonly cells: Place | undefined
  /** Between this battery and the next. What opens there opens the string. */
  readonly behind: Place
  readonly terminals: Place
}

/** A string is one battery: its cables in series lie one after the other between what it gives and its terminals. */
function placesInSeries(strings: ReadonlyMap<BlockId, Joined>): ReadonlyMap<BlockId, InSeries> {
  const places = new Map<BlockId, InSeries>()
  for (const { members, fault } of new Set(strings.values())) {
    const [terminals] = members
    if (fault || terminals === undefined) continue
    for (const [i, member] of members.entries())
      places.set(member, {
        cells: i === 0 ? side(member, 'cells') : undefined,
        behind: i === members.length - 1 ? terminals : side(member, 'cells'),
        terminals,
      })
  }
  return places
}

/** The devices in a cable from its `from` end on, each with the length of cable before it, m. One that does not say where it is counts as at the
 * battery, else at the `from` end; a second one as at the other end. */
function alongCable(
  inside: readonly Switch[],
  { ends, length }: DcCable,
): readonly { readonly one: Switch; readonly at: number }[] {
  const last = length ?? Number.POSITIVE_INFINITY
  const isFedAtTo = ends[1].kind === 'battery' && ends[0].kind !== 'battery'
  const [first, second] = isFedAtTo ? [last, 0] : [0, last]
  let unknown = 0
  return inside
    .map((one) => ({ one, at: Math.min(one.at ?? (unknown++ === 0 ? first : second), last) }))
    .sort((a, b) => a.at - b.at)
}

/** What hangs together through conductors, devices and batteries. */
function islandsOf({ conductors, devices, batteries, feeders, sinks, busbars }: Wired): readonly Island[] {
  const same = new SamePlaces()
  for (const { ends } of [...conductors, ...devices]) same.join(ends[0], ends[1])
  const islands = new Map<
    Place,
    { -readonly [K in keyof Wired]: Wired[K][number][] } & { of: Map<BlockId, number[]> }
  >()
  const islandAt = (place: Place) =>
    getOrInsert(islands, same.of(place), () => ({
      conductors: [],
      devices: [],
      batteries: [],
      feeders: [],
      sinks: [],
      busbars: [],
      of: new Map(),
    }))
  for (const one of conductors) {
    const island = islandAt(one.ends[0])
    getOrInsert(island.of, one.cable, (): number[] => []).push(island.conductors.length)
    island.conductors.push(one)
  }
  for (const one of devices) islandAt(one.ends[0]).devices.push(one)
  for (const one of batteries) islandAt(one.place).batteries.push(one)
  for (const one of feeders) islandAt(one.place).feeders.push(one)
  for (const one of sinks) islandAt(one.place).sinks.push(one)
  for (const one of busbars) islandAt(one.place).busbars.push(one)
  return [...islands.values()]
}
