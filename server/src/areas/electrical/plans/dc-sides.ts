import { getOrInsert } from '../../../common/get-or-insert.ts'
import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { endsOf, systemOf } from './cable-circuit.ts'
import { otherPole, type Pole, poleOf } from './cable-pole.ts'
import { type DcParts, type PartEnd, partsOfFile } from './dc-parts.ts'
import { driveOf } from './drive-of.ts'

/** A cable, or a device with what it is bolted to, as a cable of no length. */
interface Joint {
  readonly joint: BlockId
  readonly ends: readonly PartEnd[]
}

/** One end of a DC cable, with all that can be reached from there by other DC cables. */
export interface Side {
  readonly hasBattery: boolean
  readonly hasLoad: boolean
  /** Controllers, motors wired without one, converters at their input, and other loads. */
  readonly loads: () => readonly Block[]
  readonly batteries: () => readonly Block[]
  readonly chargers: () => readonly Block[]
}

interface OfKind {
  readonly kind: string
}

/** What a current does not pass through: whatever lies behind a battery or a converter is fed by it. */
export const endsWay = ({ kind }: OfKind): boolean =>
  ['battery', 'motor', 'load', 'charger', 'converter'].includes(kind)
const isBattery = ({ kind }: OfKind): boolean => kind === 'battery'
const isLoad = ({ kind }: OfKind): boolean => ['controller', 'motor', 'load', 'converter'].includes(kind)
const isCharger = ({ kind }: OfKind): boolean => kind === 'charger'

/** What joins the parts of one pole. The output of a converter is no end: it belongs to a network of its own. */
const jointsOf = ({ cables, switches }: DcParts, pole: Pole): readonly Joint[] => [
  ...switches.flatMap(({ device, kind, from, to }) =>
    [from, to].flatMap((part): readonly Joint[] =>
      part ? [{ joint: device, ends: [{ at: device, kind }, part] }] : [],
    ),
  ),
  ...cables.flatMap(({ cable, ends, pole: own }): readonly Joint[] => {
    if (own !== undefined && own !== 'series' && own !== pole) return []
    const [from, to] = ends
    return [
      { joint: cable, ends: from.kind === 'converter' ? [to] : from.at === to.at ? [from] : [from, to] },
    ]
  }),
]

/** Each block once. */
export const distinct = <B extends Block | BlockId>(blocks: readonly B[]): readonly B[] => [
  ...new Set(blocks),
]

/** A cable that is the only way to what lies beyond it: `reached[from]` up to `reached[to]`. */
interface Cut {
  readonly beyond: BlockId
  readonly from: number
  readonly to: number
}

/** What hangs together by DC cables. */
interface Island {
  /** Batteries and loads, once for each way that leads to them, in the order of the walk. */
  readonly reached: readonly BlockId[]
  /** How many of the first so many are batteries, and loads. */
  readonly batteriesTo: readonly number[]
  readonly loadsTo: readonly number[]
  readonly cuts: ReadonlyMap<BlockId, Cut>
  readonly batteries: readonly BlockId[]
  readonly loads: readonly BlockId[]
  readonly chargers: readonly BlockId[]
  /** The drives of the parts in it; undefined: some are at the top of the file. */
  readonly drives: readonly (BlockId | undefined)[]
}

/** What lies on one side of a cable of an island. */
function sideIn(
  { reached, batteriesTo, loadsTo, cuts, batteries, loads, chargers }: Island,
  cable: BlockId,
  end: BlockId,
  { blockOf }: Lookup,
): Side {
  const cut = cuts.get(cable)
  // A cable that closes a ring parts nothing.
  if (!cut)
    return {
      hasBattery: batteries.length > 0,
      hasLoad: loads.length > 0,
      loads: () => loads.map(blockOf),
      batteries: () => batteries.map(blockOf),
      chargers: () => chargers.map(blockOf),
    }
  const { from, to } = cut
  const isBeyond = cut.beyond === end
  const has = (upTo: readonly number[]): boolean => {
    const inside = (upTo[to] ?? 0) - (upTo[from] ?? 0)
    return (isBeyond ? inside : (upTo[reached.length] ?? 0) - inside) > 0
  }
  const there = () => (isBeyond ? reached.slice(from, to) : [...reached.slice(0, from), ...reached.slice(to)])
  return {
    hasBattery: has(batteriesTo),
    hasLoad: has(loadsTo),
    loads: () =>
      !isBeyond && from === to ? loads.map(blockOf) : distinct(there()).map(blockOf).filter(isLoad),
    batteries: () => distinct(there()).map(blockOf).filter(isBattery),
    chargers: () => distinct(there()).map(blockOf).filter(isCharger),
  }
}

const counted = (reached: readonly PartEnd[], isOne: (part: PartEnd) => boolean): readonly number[] => {
  const counts = [0]
  for (const [i, part] of reached.entries()) counts.push((counts[i] ?? 0) + (isOne(part) ? 1 : 0))
  return counts
}

interface Visit {
  readonly part: PartEnd
  readonly by: Joint | undefined
  readonly joints: readonly Joint[]
  readonly index: number
  /** Index of the earliest part that a way not through `by` leads back to. */
  low: number
  readonly from: number
  next: number
}

type JointsAt = ReadonlyMap<BlockId, readonly Joint[]>

/** Walks everything along DC cables from a part, and finds the cables that are the only way to what lies behind them (Tarjan's bridges). */
function walk(
  start: PartEnd,
  at: JointsAt,
  visited: Map<BlockId, number>,
  driveAt: (id: BlockId) => BlockId | undefined,
): Island {
  const reached: PartEnd[] = []
  const cuts = new Map<BlockId, Cut>()
  const drives = new Set<BlockId | undefined>()
  const visit = (part: PartEnd, by: Joint | undefined): Visit => {
    const index = visited.size
    visited.set(part.at, index)
    drives.add(driveAt(part.at))
    const from = reached.length
    if (isLoad(part)) reached.push(part)
    return { part, by, joints: at.get(part.at) ?? [], index, low: index, from, next: 0 }
  }
  const way = [visit(start, undefined)]
  for (let here = way.at(-1); here; here = way.at(-1)) {
    const joint = here.joints[here.next++]
    if (joint) {
      const own = here.part.at
      const other = joint === here.by ? undefined : joint.ends.find((end) => end.at !== own)
      if (other === undefined) continue
      if (endsWay(other)) {
        cuts.set(joint.joint, { beyond: other.at, from: reached.length, to: reached.length + 1 })
        reached.push(other)
        continue
      }
      const known = visited.get(other.at)
      if (known === undefined) way.push(visit(other, joint))
      else here.low = Math.min(here.low, known)
      continue
    }
    way.pop()
    const before = way.at(-1)
    if (!before || !here.by) continue
    before.low = Math.min(before.low, here.low)
    if (here.low > before.index)
      cuts.set(here.by.joint, { beyond: here.part.at, from: here.from, to: reached.length })
  }
  const idsOf = (isOne: (part: PartEnd) => boolean) => distinct(reached.filter(isOne).map((one) => one.at))
  return {
    reached: reached.map((one) => one.at),
    batteriesTo: counted(reached, isBattery),
    loadsTo: counted(reached, isLoad),
    cuts,
    batteries: idsOf(isBattery),
    loads: idsOf(isLoad),
    chargers: idsOf(isCharger),
    drives: [...drives],
  }
}

/** What hangs together, by the parts in it that a current passes. */
const islandsOf = (pole: Pole) =>
  function dcIslands({ ofFile, blockOf }: FileLookup): ReadonlyMap<BlockId, Island> {
    const joints = jointsOf(ofFile(partsOfFile), pole)
    const at = new Map<BlockId, Joint[]>()
    for (const joint of joints)
      for (const end of joint.ends) getOrInsert(at, end.at, (): Joint[] => []).push(joint)
    const driveAt = (id: BlockId) => {
      const drive = driveOf(blockOf(id))
      return drive && idOf(drive)
    }
    const islands = new Map<BlockId, Island>()
    for (const start of joints.flatMap(({ ends }) => ends)) {
      if (endsWay(start) || islands.has(start.at)) continue
      const visited = new Map<BlockId, number>()
      const island = walk(start, at, visited, driveAt)
      for (const part of visited.keys()) islands.set(part, island)
    }
    return islands
  }

/** The negative pole has a network of its own only where cables of one pole are in the job: a cable of both poles is in either. */
const islandsByPole = { positive: islandsOf('positive'), negative: islandsOf('negative') }

/** Throws Unreadable where one of these cables cannot be read: it may be one that leads to what is looked for. */
function mustBeRead(cables: readonly BlockId[], lookup: Lookup): void {
  for (const id of cables) {
    const cable = lookup.blockOf(id)
    endsOf(cable, lookup.from(cable))
    systemOf(cable, lookup.from(cable))
  }
}

/** Cables that cannot be read, of those that can matter to parts of one drive: its own, and those at the top of the file. */
function unreadAround(drive: BlockId | undefined, isOpen: boolean, lookup: Lookup): readonly BlockId[] {
  const { unread } = lookup.ofFile(partsOfFile)
  if (isOpen || drive === undefined) return unread
  return unread.filter((id) => {
    const own = driveOf(lookup.blockOf(id))
    return !own || idOf(own) === drive
  })
}

/** The part of the DC network at a block, all cables of a pole considered but one. */
function islandAt(block: Block, but: Block | undefined, pole: Pole, lookup: Lookup): Island | undefined {
  const drive = driveOf(block)
  const own = drive && idOf(drive)
  const island = lookup.ofFile(islandsByPole[pole]).get(idOf(block))
  const isOpen = island?.drives.some((one) => one !== own) ?? false
  mustBeRead(
    unreadAround(own, isOpen, lookup).filter((cable) => !but || cable !== idOf(but)),
    lookup,
  )
  return island
}

/** The batteries that DC cables lead to from a block: the same list for all that hang together. */
export function batteriesAlong(block: Block, but: Block | undefined, lookup: Lookup): readonly BlockId[] {
  if (endsWay(block)) return isBattery(block) ? [idOf(block)] : none
  const along = (pole: Pole) => islandAt(block, but, pole, lookup)?.batteries ?? none
  const pole = (but && poleOf(but)) ?? 'positive'
  const found = along(pole)
  return found.length > 0 || but ? found : along(otherPole[pole])
}

const none: readonly never[] = []

/** Whether a cable leaves the output of the converter at its end. */
const isOutput = (cable: Block, end: Block, lookup: Lookup): boolean =>
  end.kind === 'converter' && endsOf(cable, lookup)[0] === end

/** What can be reached from one end of a cable without it. The output of a converter feeds as a battery does. */
export function sideOf(cable: Block, end: Block, lookup: Lookup): Side {
  if (isOutput(cable, end, lookup))
    return {
      hasBattery: true,
      hasLoad: false,
      loads: () => none,
      batteries: () => none,
      chargers: () => none,
    }
  const itself: Side = {
    hasBattery: isBattery(end),
    hasLoad: isLoad(end),
    loads: () => (isLoad(end) ? [end] : none),
    batteries: () => (isBattery(end) ? [end] : none),
    chargers: () => (isCharger(end) ? [end] : none),
  }
  if (endsWay(end)) return itself
  const island = islandAt(end, cable, poleOf(cable) ?? 'positive', lookup)
  return island ? sideIn(island, idOf(cable), idOf(end), lookup) : itself
}

/** By the batteries, the parts at the other ends of their cables. */
const besideBatteries = ({ ofFile }: FileLookup): ReadonlyMap<BlockId, readonly BlockId[]> => {
  const beside = new Map<BlockId, BlockId[]>()
  for (const { ends } of jointsOf(ofFile(partsOfFile), 'positive'))
    for (const end of ends)
      if (isBattery(end)) getOrInsert(beside, end.at, (): BlockId[] => []).push(...ends.map(({ at }) => at))
  return beside
}

/** What DC cables lead to from some batteries together. Throws Unreadable. */
export function alongBatteries(
  batteries: readonly Block[],
  lookup: Lookup,
): { readonly loads: readonly Block[]; readonly chargers: readonly Block[] } {
  mustBeRead(lookup.ofFile(partsOfFile).unread, lookup)
  const beside = lookup.ofFile(besideBatteries)
  const islands = lookup.ofFile(islandsByPole.positive)
  const ends = batteries.flatMap((battery) => beside.get(idOf(battery)) ?? none)
  const found = [...new Set(ends.flatMap((end) => islands.get(end) ?? []))]
  const all = distinct([...ends, ...found.flatMap(({ loads, chargers }) => [...loads, ...chargers])])
  const blocks = all.map(lookup.blockOf)
  return { loads: blocks.filter(isLoad), chargers: blocks.filter(isCharger) }
}

/** By the other blocks at which phase cables end, the motors. */
const motorsByPhases = ({ ofFile }: FileLookup): ReadonlyMap<BlockId, readonly BlockId[]> => {
  const motors = new Map<BlockId, BlockId[]>()
  for (const ends of ofFile(partsOfFile).phases)
    for (const end of distinct(ends.map(({ at }) => at)))
      for (const { at, kind } of ends)
        if (kind === 'motor') getOrInsert(motors, end, (): BlockId[] => []).push(at)
  return motors
}

/** Motors that phase cables lead to from a controller. */
export function motorsAlong(controller: Block, lookup: Lookup): readonly Block[] {
  const drive = driveOf(controller)
  mustBeRead(unreadAround(drive && idOf(drive), false, lookup), lookup)
  return (lookup.ofFile(motorsByPhases).get(idOf(controller)) ?? none).map(lookup.blockOf)
}
