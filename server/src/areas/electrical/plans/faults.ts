import { getOrInsert } from '../../../common/get-or-insert.ts'
import { SamePlaces } from '../../../common/same-places.ts'
import { type DcNetwork, faultCurrents, faultFlow } from '../../../engineering/electrical/dc-network.ts'
import { type PathLink, pathsFrom } from '../../../engineering/electrical/fault-paths.ts'
import { leastFault } from '../../../engineering/electrical/least-fault.ts'
import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { solve } from '../../../store/solve.ts'
import { stringOf } from '../../common/battery-string.ts'
import { ok } from '../../common/outcome.ts'
import { readable } from '../../common/stated-fact.ts'
import { lowestOfString } from '../../common/string-facts.ts'
import { bankShortCircuit } from './bank-fault.ts'
import { highestOfBank } from './banks-around.ts'
import { outcomeOf } from './cable-outcome.ts'
import { resistanceIn } from './conductor-loop.ts'
import { type Device, type Island, type Place, topologyOfFile } from './dc-topology.ts'

/** Short circuits that a fuse or breaker may see. */
export interface DeviceFaults {
  /** At its place, from all batteries that are known, chargers and converters, with cold conductors, A. */
  readonly highest: number
  /** The one that is hardest to open; undefined where no battery that is known comes to it, or no rating. */
  readonly least: LeastFault | undefined
  /** The smallest current through it in any of these, A; undefined as `least`. */
  readonly lowest: number | undefined
  /** Fuses and breakers that what it protects leads on to. */
  readonly next: readonly BlockId[]
}

interface FileFaults {
  readonly devices: ReadonlyMap<BlockId, DeviceFaults>
  /** For each cable the fuses and breakers that feed a short circuit in it together, once for each piece of it that differs in these. */
  readonly feeding: ReadonlyMap<BlockId, readonly (readonly BlockId[])[]>
}

/** From one battery alone or from all, at the low end of their window and with hot conductors, as far from the device as it protects. */
export interface LeastFault {
  /** Through the device, A. */
  readonly amps: number
  /** What opens it, or a smaller fuse before it, for certain, A. */
  readonly opens: number
  /** The cable in whose far end the fault is; undefined where it is at the device. */
  readonly at: BlockId | undefined
}

/** A battery or string that says what it gives in a short circuit. */
interface Known {
  readonly place: Place
  readonly high: number
  readonly low: number
  /** Ω. */
  readonly least: number
  readonly most: number
}

const ground = ''

/** So that the side from which a device is fed can be seen. Ω. */
const inDevice = 1e-9

const currents = solve(
  ({ network, pairs }: { network: Omit<DcNetwork, 'draws'>; pairs: readonly [string, string][] }) =>
    faultCurrents(network, pairs),
)
const flow = solve(({ network, at }: { network: Omit<DcNetwork, 'draws'>; at: string }) =>
  faultFlow(network, [at, ground]),
)

function knownIn({ batteries }: Island, { blockOf, from }: FileLookup): readonly Known[] {
  return batteries.flatMap(({ battery, place }) => {
    const block = blockOf(battery)
    const lookup = from(block)
    const fault = bankShortCircuit(block, lookup)
    const high = highestOfBank(block, lookup)
    const low = readable(() => lowestOfString(stringOf(block, lookup)))
    return fault && high !== undefined && low !== undefined
      ? [{ place, high, low: Math.min(low, high), least: high / fault.highest, most: high / fault.lowest }]
      : []
  })
}

const faultsOfFile = (file: FileLookup): FileFaults => {
  const all = [...new Set(file.ofFile(topologyOfFile).islands.values())].flatMap(
    (island) => faultsWhereKnown(island, file) ?? [],
  )
  return {
    devices: new Map(all.flatMap(({ devices }) => [...devices])),
    feeding: new Map(all.flatMap(({ feeding }) => [...feeding])),
  }
}

const isFuse = ({ kind }: Device): boolean => kind === 'protection'

/** None where a figure is beyond what can be computed. */
function faultsWhereKnown(island: Island, file: FileLookup): FileFaults | undefined {
  const found = outcomeOf(() => ok(faultsIn(island, file)))
  return found.ok ? found.value : undefined
}

function faultsIn(island: Island, file: FileLookup): FileFaults | undefined {
  const fuses = island.devices.filter(isFuse)
  const known = fuses.length > 0 ? knownIn(island, file) : []
  if (known.length === 0) return undefined
  const linksAt = (warmth: 'cold' | 'hot', through: number): readonly PathLink[] => [
    ...island.conductors.map((one) => ({ ends: one.ends, resistance: resistanceIn(one, warmth, file) ?? 0 })),
    ...island.devices.map(({ ends }) => ({ ends, resistance: through })),
  ]
  const sourcesAt = (volts: 'high' | 'low', ohms: 'least' | 'most') =>
    known.map((one) => ({ negative: ground, positive: one.place, emf: one[volts], resistance: one[ohms] }))
  const fed = island.feeders.reduce((sum, { current }) => sum + current, 0)
  const places = [...new Set(fuses.flatMap(({ ends }) => ends))]
  const cold = { links: linksAt('cold', 0), sources: sourcesAt('high', 'least') }
  const highest = new Map(
    currents({ network: cold, pairs: places.map((place) => [place, ground]) }).map((amps, i) => [
      places[i],
      amps,
    ]),
  )
  const hot = linksAt('hot', inDevice)
  const zones = zonesOf(island, hot)
  const { faults, feeding } = leastIn(island, known, hot, zones, (at) => {
    const { linkCurrents } = flow({
      network: { links: linksAt('hot', 0), sources: sourcesAt('low', 'most') },
      at,
    })
    return linkCurrents.slice(island.conductors.length).map(Math.abs)
  })
  const feeders = new Map(
    [...feeding].map(([zone, by]) => [zone, [...by.keys()].map(({ device }) => device)]),
  )
  const nextOf = nextFuses(fuses, zones, feeding)
  return {
    devices: new Map(
      fuses.map((fuse) => [
        fuse.device,
        {
          highest: Math.max(...fuse.ends.map((end) => highest.get(end) ?? 0)) + fed,
          least: faults.get(fuse.device)?.worst,
          lowest: faults.get(fuse.device)?.lowest,
          next: nextOf.get(fuse.device) ?? [],
        },
      ]),
    ),
    feeding: new Map(
      [...island.of].map(([cable, pieces]) => {
        const of = new Set(pieces.map((piece) => zones.of(island.conductors[piece]?.ends[0] ?? '')))
        return [cable, [...of].flatMap((zone) => (feeders.has(zone) ? [feeders.get(zone) ?? []] : []))]
      }),
    ),
  }
}

/** The fuses that are fed from what another one protects, and not the other way round. */
function nextFuses(
  fuses: readonly Device[],
  { of }: Zones,
  feeding: ReadonlyMap<string, ReadonlyMap<Device, Farthest>>,
): ReadonlyMap<BlockId, readonly BlockId[]> {
  const fedIn = new Map<string, BlockId[]>()
  for (const { device, ends } of fuses)
    for (const [i, end] of ends.entries()) {
      const other = of(ends[i === 0 ? 1 : 0] ?? '')
      const isFeeding = [...(feeding.get(of(end))?.keys() ?? [])].some((one) => one.device === device)
      const feedsOther = [...(feeding.get(other)?.keys() ?? [])].some((one) => one.device === device)
      if (feedsOther && !isFeeding) getOrInsert(fedIn, of(end), (): BlockId[] => []).push(device)
    }
  const next = new Map<BlockId, BlockId[]>()
  for (const [zone, by] of feeding)
    for (const { device } of by.keys())
      getOrInsert(next, device, (): BlockId[] => []).push(...(fedIn.get(zone) ?? []))
  return next
}

/** What hangs together without a fuse or breaker. */
interface Zones {
  readonly of: (place: Place) => string
  readonly links: ReadonlyMap<
    string,
    readonly { readonly link: PathLink; readonly cable: BlockId | undefined }[]
  >
}

function zonesOf({ conductors, devices }: Island, hot: readonly PathLink[]): Zones {
  const same = new SamePlaces()
  const inside = hot.flatMap((link, i) => {
    const device = devices[i - conductors.length]
    return device && isFuse(device) ? [] : [{ link, cable: conductors[i]?.cable }]
  })
  for (const { link } of inside) same.join(link.ends[0], link.ends[1])
  const links = new Map<string, { link: PathLink; cable: BlockId | undefined }[]>()
  for (const one of inside)
    getOrInsert(links, same.of(one.link.ends[0]), (): (typeof inside)[number][] => []).push(one)
  return { of: (place) => same.of(place), links }
}

interface Farthest {
  readonly place: Place
  /** Ω. */
  readonly resistance: number
  readonly at: BlockId | undefined
}

/** The place that is farthest from another before the next fuse or breaker. */
function farthestFrom(place: Place, { of, links }: Zones): Farthest {
  const inside = links.get(of(place)) ?? []
  let farthest: Farthest = { place, resistance: 0, at: undefined }
  for (const [to, { resistance, by }] of pathsFrom(
    place,
    inside.map(({ link }) => link),
  ))
    if (resistance > farthest.resistance)
      farthest = { place: to, resistance, at: by === undefined ? undefined : inside[by]?.cable }
  return farthest
}

/** A fuse with the side at which a battery comes to it. */
interface Fed {
  readonly fuse: Device
  readonly side: 0 | 1
  /** On the way from the battery, Ω. */
  readonly resistance: number
  /** The smallest rating on the way, itself included, A. */
  readonly rating: number
}

/** The fuses that a battery comes to, each from the side that it comes to first; where it comes to both, from each. */
function fedFrom(start: Place, { conductors, devices }: Island, hot: readonly PathLink[]): readonly Fed[] {
  const paths = pathsFrom(start, hot)
  const ratings = new Map<Place, number>([[start, Number.POSITIVE_INFINITY]])
  const ratingAt = (place: Place): number => {
    const way: Place[] = []
    let at = place
    for (; !ratings.has(at); at = paths.get(at)?.from ?? start) way.push(at)
    for (const one of way.toReversed()) {
      const { by = -1, from = start } = paths.get(one) ?? {}
      const device = devices[by - conductors.length]
      const before = ratings.get(from) ?? Number.POSITIVE_INFINITY
      ratings.set(
        one,
        device && isFuse(device) && device.rating > 0 ? Math.min(before, device.rating) : before,
      )
    }
    return ratings.get(place) ?? Number.POSITIVE_INFINITY
  }
  return devices.flatMap((fuse, i): readonly Fed[] => {
    if (!isFuse(fuse) || fuse.rating <= 0) return []
    return ([0, 1] as const).flatMap((side) => {
      const [near, far] = [paths.get(fuse.ends[side]), paths.get(fuse.ends[side === 0 ? 1 : 0])]
      if (!near || !far || near.by === conductors.length + i) return []
      const rating = Math.min(ratingAt(fuse.ends[side]), fuse.rating)
      return [{ fuse, side, resistance: near.resistance, rating }]
    })
  })
}

interface Least {
  readonly faults: ReadonlyMap<BlockId, { readonly worst: LeastFault; readonly lowest: number }>
  /** What feeds each zone, with the place farthest from it there. */
  readonly feeding: ReadonlyMap<string, ReadonlyMap<Device, Farthest>>
}

/** Of each fuse the fault that gives the least part of what opens it. */
function leastIn(
  island: Island,
  known: readonly Known[],
  hot: readonly PathLink[],
  zones: Zones,
  throughAll: (place: Place) => readonly number[],
): Least {
  const far = new Map<string, Farthest>()
  const farOf = ({ fuse, side }: Fed): Farthest => {
    const outgoing = fuse.ends[side === 0 ? 1 : 0]
    return getOrInsert(far, outgoing, () => farthestFrom(outgoing, zones))
  }
  const faults = new Map<BlockId, { worst: LeastFault; lowest: number }>()
  const add = ({ device }: Device, fault: LeastFault) => {
    const { worst = fault, lowest = fault.amps } = faults.get(device) ?? {}
    const isWorse = fault.amps / fault.opens < worst.amps / worst.opens
    faults.set(device, { worst: isWorse ? fault : worst, lowest: Math.min(lowest, fault.amps) })
  }
  const feeding = new Map<string, Map<Device, Farthest>>()
  for (const { place, low, most } of known)
    for (const fed of fedFrom(place, island, hot)) {
      const end = farOf(fed)
      const amps = low / (most + fed.resistance + end.resistance)
      add(fed.fuse, { amps, opens: leastFault(fed.rating), at: end.at })
      getOrInsert(feeding, zones.of(end.place), () => new Map<Device, Farthest>()).set(fed.fuse, end)
    }
  // Several that feed one place share the fault: it goes on where none of them opens. Once one has opened, the others carry it alone.
  for (const fuses of feeding.values()) {
    if (fuses.size < 2 || known.length < 2) continue
    const [, end] = [...fuses].reduce((one, other) => (other[1].resistance > one[1].resistance ? other : one))
    const through = throughAll(end.place)
    const shared = [...fuses.keys()].map((fuse) => ({
      fuse,
      amps: through[island.devices.indexOf(fuse)] ?? 0,
      opens: leastFault(fuse.rating),
    }))
    if (shared.every(({ amps, opens }) => amps > 0 && amps < opens))
      for (const { fuse, amps, opens } of shared) add(fuse, { amps, opens, at: end.at })
  }
  return { faults, feeding }
}

/** Undefined where the batteries around a fuse or breaker do not say what they give. */
export const faultsAt = plan((device: Block, { ofFile }: Lookup): DeviceFaults | undefined =>
  ofFile(faultsOfFile).devices.get(idOf(device)),
)

/** The fuses and breakers that feed a short circuit in a DC cable, together, for each of its pieces behind one. */
export const feedingFaultsIn = plan(
  (cable: Block, { ofFile }: Lookup): readonly (readonly BlockId[])[] =>
    ofFile(faultsOfFile).feeding.get(idOf(cable)) ?? [],
)
