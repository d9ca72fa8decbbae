import { type Block, childrenOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { endsOf, systemOf } from './cable-circuit.ts'
import { otherPole, type Pole, poleOf } from './cable-pole.ts'
import { type SwitchKind, switchKinds } from './dc-parts.ts'

/** A cable with the blocks that it joins, as far as they are known. */
interface Joint {
  readonly cable: BlockId
  readonly ends: readonly BlockId[]
}

/** Cables by the blocks they end at. */
interface Joints {
  readonly dc: readonly Joint[]
  readonly dcAt: ReadonlyMap<BlockId, readonly Joint[]>
  /** The motors at the other ends of cables that do not carry DC. */
  readonly motorsAt: ReadonlyMap<BlockId, readonly BlockId[]>
  /** Cables whose ends, or what they carry, cannot be read. */
  readonly unread: readonly BlockId[]
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

/** What a current does not pass through: whatever lies behind a battery or a converter is fed by it. */
export const endsWay = ({ kind }: Block): boolean =>
  ['battery', 'motor', 'load', 'charger', 'converter'].includes(kind)
const isBattery = ({ kind }: Block): boolean => kind === 'battery'
const isLoad = ({ kind }: Block): boolean => ['controller', 'motor', 'load', 'converter'].includes(kind)
const isCharger = ({ kind }: Block): boolean => kind === 'charger'

const add = <V>(to: Map<BlockId, V[]>, block: BlockId, value: V): void => {
  const known = to.get(block)
  if (known) known.push(value)
  else to.set(block, [value])
}

/** The ends of a cable, and whether it carries DC. The output of a converter is none: it belongs to a network of its own. Throws Unreadable. */
const readCable = (cable: Block, lookup: Lookup) => ({
  ends: distinct(
    endsOf(cable, lookup).flatMap((end, which) =>
      !end || (which === 0 && end.kind === 'converter') ? [] : end,
    ),
  ),
  isDc: systemOf(cable, lookup) === 'dc',
})

/** What devices are bolted to, each as a cable of no length. */
const boltsOf = (devices: readonly Block[], from: (device: Block) => Lookup): readonly Joint[] =>
  devices.flatMap((device) =>
    (['from', 'to'] as const).flatMap((end): readonly Joint[] => {
      const part = from(device).referred(end)
      return part && part !== device ? [{ cable: idOf(device), ends: [idOf(device), idOf(part)] }] : []
    }),
  )

/** Those that one pole has. */
function jointsOf(
  cables: readonly Block[],
  devices: readonly Block[],
  from: (block: Block) => Lookup,
  pole: Pole,
): Joints {
  const dc: Joint[] = [...boltsOf(devices, from)]
  const dcAt = new Map<BlockId, Joint[]>()
  const motorsAt = new Map<BlockId, BlockId[]>()
  const unread: BlockId[] = []
  for (const joint of dc) for (const end of joint.ends) add(dcAt, end, joint)
  for (const cable of cables) {
    if ((poleOf(cable) ?? pole) !== pole) continue
    try {
      const { ends, isDc } = readCable(cable, from(cable))
      const joint = { cable: idOf(cable), ends: ends.map(idOf) }
      if (isDc) dc.push(joint)
      for (const end of joint.ends)
        if (isDc) add(dcAt, end, joint)
        else for (const motor of ends) if (motor.kind === 'motor') add(motorsAt, end, idOf(motor))
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error
      unread.push(idOf(cable))
    }
  }
  return { dc, dcAt, motorsAt, unread }
}

/** Throws Unreadable where one of these cables cannot be read: it may be one that leads to what is looked for. */
function mustBeRead(cables: readonly BlockId[], lookup: Lookup): void {
  for (const id of cables) {
    const cable = lookup.blockOf(id)
    readCable(cable, lookup.from(cable))
  }
}

/** Each block once. */
export const distinct = <B extends Block | BlockId>(blocks: readonly B[]): readonly B[] => [
  ...new Set(blocks),
]

/** The negative pole has a network of its own only where cables of one pole are in the job: a cable of both poles is in either. */
const byPole = <T>(of: (pole: Pole) => T): Readonly<Record<Pole, T>> => ({
  positive: of('positive'),
  negative: of('negative'),
})

const jointsOfDrive = byPole((pole) =>
  plan((drive, lookup) =>
    jointsOf(
      childrenOf(drive, 'cable'),
      switchKinds.flatMap((kind) => childrenOf(drive, kind)),
      lookup.from,
      pole,
    ),
  ),
)
/** Cables at the top of the file. */
const sharedJoints = byPole(
  (pole) =>
    ({ ofKind, from }: FileLookup): Joints =>
      jointsOf(ofKind('cable'), switchKinds.flatMap(ofKind), from, pole),
)
const allJoints = byPole((pole) => ({ ofKind, from }: FileLookup): Joints => {
  const all = (kind: SwitchKind | 'cable') => [
    ...ofKind('drive').flatMap((drive) => childrenOf(drive, kind)),
    ...ofKind(kind),
  ]
  return jointsOf(all('cable'), switchKinds.flatMap(all), from, pole)
})

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
  /** It goes on where the cables of other drives end too. */
  readonly isOpen: boolean
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

const counted = (reached: readonly Block[], isOne: (block: Block) => boolean): readonly number[] => {
  const counts = [0]
  for (const [i, block] of reached.entries()) counts.push((counts[i] ?? 0) + (isOne(block) ? 1 : 0))
  return counts
}

interface Visit {
  readonly block: Block
  readonly by: Joint | undefined
  readonly joints: readonly Joint[]
  readonly index: number
  /** Index of the earliest block that a way not through `by` leads back to. */
  low: number
  readonly from: number
  next: number
}

/** What a walk may follow: DC cables that can end in one drive, or all of the file. */
interface Ground {
  readonly joints: readonly Joints[]
  readonly isWithin: (block: Block) => boolean
  readonly blockOf: FileLookup['blockOf']
}

function dcAt(block: Block, joints: readonly Joints[]): readonly Joint[] {
  const [one = [], ...more] = joints.flatMap((of) => {
    const here = of.dcAt.get(idOf(block))
    return here ? [here] : []
  })
  return more.length === 0 ? one : [one, ...more].flat()
}

/** Walks everything along DC cables from a block, and finds the cables that are the only way to what lies behind them (Tarjan's bridges). */
function walk(start: Block, { joints, isWithin, blockOf }: Ground, visited: Map<Block, number>): Island {
  const reached: Block[] = []
  const cuts = new Map<BlockId, Cut>()
  let isOpen = false
  const visit = (block: Block, by: Joint | undefined): Visit => {
    const index = visited.size
    visited.set(block, index)
    const isInside = isWithin(block)
    isOpen ||= !isInside
    const from = reached.length
    if (isLoad(block)) reached.push(block)
    return { block, by, joints: isInside ? dcAt(block, joints) : [], index, low: index, from, next: 0 }
  }
  const way = [visit(start, undefined)]
  for (let at = way.at(-1); at; at = way.at(-1)) {
    const joint = at.joints[at.next++]
    if (joint) {
      const here = idOf(at.block)
      const id = joint === at.by ? undefined : joint.ends.find((end) => end !== here)
      if (id === undefined) continue
      const other = blockOf(id)
      if (endsWay(other)) {
        cuts.set(joint.cable, { beyond: id, from: reached.length, to: reached.length + 1 })
        reached.push(other)
        continue
      }
      const known = visited.get(other)
      if (known === undefined) way.push(visit(other, joint))
      else at.low = Math.min(at.low, known)
      continue
    }
    way.pop()
    const before = way.at(-1)
    if (!before || !at.by) continue
    before.low = Math.min(before.low, at.low)
    if (at.low > before.index)
      cuts.set(at.by.cable, { beyond: idOf(at.block), from: at.from, to: reached.length })
  }
  return {
    reached: reached.map(idOf),
    batteriesTo: counted(reached, isBattery),
    loadsTo: counted(reached, isLoad),
    cuts,
    batteries: distinct(reached.filter(isBattery)).map(idOf),
    loads: distinct(reached.filter(isLoad)).map(idOf),
    chargers: distinct(reached.filter(isCharger)).map(idOf),
    isOpen,
  }
}

/** DC cables and what they join. */
interface Network {
  /** By the blocks in it; none for a block at which no DC cable ends. */
  readonly islands: ReadonlyMap<BlockId, Island>
  /** Cables that cannot be read. */
  readonly unread: readonly BlockId[]
}

/** The islands are walked in one order, whoever asks first. */
function networkOf(ground: Ground, starts: readonly Block[]): Network {
  const islands = new Map<BlockId, Island>()
  for (const start of starts) {
    if (endsWay(start) || islands.has(idOf(start)) || dcAt(start, ground.joints).length === 0) continue
    const visited = new Map<Block, number>()
    const island = walk(start, ground, visited)
    for (const block of visited.keys()) islands.set(idOf(block), island)
  }
  return { islands, unread: ground.joints.flatMap(({ unread }) => unread) }
}

export function driveOf(block: Block): Block | undefined {
  let drive: Block | undefined = block
  while (drive && drive.kind !== 'drive') drive = drive.parent
  return drive
}

const endsIn = ({ dc }: Joints): readonly BlockId[] => dc.flatMap(({ ends }) => ends)

const networkOfDrive = byPole((pole) =>
  plan((drive, lookup): Network => {
    const { blockOf } = lookup
    const own = jointsOfDrive[pole](drive, lookup)
    const joints = [own, lookup.ofFile(sharedJoints[pole])]
    const isWithin = (block: Block) => driveOf(block) === drive
    return networkOf({ joints, isWithin, blockOf }, [...endsIn(own).map(blockOf), ...drive.children])
  }),
)

const networkOfFile = byPole((pole) => ({ ofFile, blockOf }: FileLookup): Network => {
  const all = ofFile(allJoints[pole])
  return networkOf({ joints: [all], isWithin: () => true, blockOf }, endsIn(all).map(blockOf))
})

/** The part of the DC network at a block, all cables of a pole considered but one. */
function islandAt(block: Block, but: Block | undefined, pole: Pole, lookup: Lookup): Island | undefined {
  const id = idOf(block)
  const drive = driveOf(block)
  const own = drive && networkOfDrive[pole](drive, lookup)
  const network = !own || own.islands.get(id)?.isOpen ? lookup.ofFile(networkOfFile[pole]) : own
  mustBeRead(
    network.unread.filter((cable) => !but || cable !== idOf(but)),
    lookup,
  )
  return network.islands.get(id)
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

/** What DC cables lead to from some batteries together. Throws Unreadable. */
export function alongBatteries(
  batteries: readonly Block[],
  lookup: Lookup,
): { readonly loads: readonly Block[]; readonly chargers: readonly Block[] } {
  const { dcAt: at, unread } = lookup.ofFile(allJoints.positive)
  mustBeRead(unread, lookup)
  const { islands } = lookup.ofFile(networkOfFile.positive)
  const ends = batteries.flatMap((battery) => (at.get(idOf(battery)) ?? none).flatMap((joint) => joint.ends))
  const found = [...new Set(ends.flatMap((end) => islands.get(end) ?? []))]
  const all = distinct([...ends, ...found.flatMap(({ loads, chargers }) => [...loads, ...chargers])])
  const blocks = all.map(lookup.blockOf)
  return { loads: blocks.filter(isLoad), chargers: blocks.filter(isCharger) }
}

/** Motors that phase cables lead to from a controller. */
export function motorsAlong(controller: Block, lookup: Lookup): readonly Block[] {
  const drive = driveOf(controller)
  const joints = drive
    ? [jointsOfDrive.positive(drive, lookup), lookup.ofFile(sharedJoints.positive)]
    : [lookup.ofFile(allJoints.positive)]
  for (const { unread } of joints) mustBeRead(unread, lookup)
  return joints.flatMap(({ motorsAt }) => (motorsAt.get(idOf(controller)) ?? none).map(lookup.blockOf))
}
