import { type Block, childrenOf } from '../../../job/model.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { endsOf, systemOf } from './cable-circuit.ts'

/** A cable with the blocks that it joins, as far as they are known. */
interface Joint {
  readonly cable: Block
  readonly ends: readonly Block[]
}

/** Cables by the blocks they end at. */
interface Joints {
  readonly dc: readonly Joint[]
  readonly dcAt: ReadonlyMap<Block, readonly Joint[]>
  /** The motors at the other ends of cables that do not carry DC. */
  readonly motorsAt: ReadonlyMap<Block, readonly Block[]>
  /** Cables whose ends cannot be read. */
  readonly unread: readonly { readonly cable: Block; readonly error: Unreadable }[]
}

/** One end of a DC cable, with all that can be reached from there by other DC cables. */
export interface Side {
  readonly hasBattery: boolean
  readonly hasLoad: boolean
  /** Controllers, and motors wired without one. */
  readonly loads: () => readonly Block[]
}

/** What a current does not pass through: whatever lies behind a battery is fed by it. */
export const endsWay = ({ kind }: Block): boolean => kind === 'battery' || kind === 'motor'
const isBattery = ({ kind }: Block): boolean => kind === 'battery'
const isLoad = ({ kind }: Block): boolean => kind === 'controller' || kind === 'motor'

const add = <V>(to: Map<Block, V[]>, block: Block, value: V): void => {
  const known = to.get(block)
  if (known) known.push(value)
  else to.set(block, [value])
}

function jointsOf(cables: readonly Block[], from: (cable: Block) => Lookup): Joints {
  const dc: Joint[] = []
  const dcAt = new Map<Block, Joint[]>()
  const motorsAt = new Map<Block, Block[]>()
  const unread: { cable: Block; error: Unreadable }[] = []
  for (const cable of cables) {
    try {
      const lookup = from(cable)
      const ends = distinct(endsOf(cable, lookup).flatMap((end) => end ?? []))
      const isDc = systemOf(cable, lookup) === 'dc'
      const joint = { cable, ends }
      if (isDc) dc.push(joint)
      for (const end of ends)
        if (isDc) add(dcAt, end, joint)
        else for (const motor of ends) if (motor.kind === 'motor') add(motorsAt, end, motor)
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error
      unread.push({ cable, error })
    }
  }
  return { dc, dcAt, motorsAt, unread }
}

/** Each block once. */
export const distinct = (blocks: readonly Block[]): readonly Block[] => [...new Set(blocks)]

const jointsOfDrive = plan((drive, lookup) => jointsOf(childrenOf(drive, 'cable'), lookup.from))
/** Cables at the top of the file. */
const sharedJoints = ({ ofKind, from }: FileLookup): Joints => jointsOf(ofKind('cable'), from)
const allJoints = ({ ofKind, from }: FileLookup): Joints => {
  const cables = ofKind('drive').flatMap((drive) => childrenOf(drive, 'cable'))
  return jointsOf([...cables, ...ofKind('cable')], from)
}

/** What hangs together by DC cables. */
class Island {
  /** Batteries and loads, once for each way that leads to them, in the order of the walk. */
  readonly #reached: Block[]
  /** How many of the first so many are batteries, and loads. */
  readonly #batteriesTo: readonly number[]
  readonly #loadsTo: readonly number[]
  readonly #cuts: ReadonlyMap<Block, Cut>
  readonly batteries: readonly Block[]
  readonly #loads: readonly Block[]
  /** It goes on where the cables of other drives end too. */
  readonly isOpen: boolean

  constructor({ reached, cuts, isOpen }: Walked) {
    this.#reached = reached
    this.#cuts = cuts
    this.isOpen = isOpen
    this.#batteriesTo = counted(reached, isBattery)
    this.#loadsTo = counted(reached, isLoad)
    this.batteries = distinct(reached.filter(isBattery))
    this.#loads = distinct(reached.filter(isLoad))
  }

  side(cable: Block, end: Block): Side {
    const cut = this.#cuts.get(cable)
    // A cable that closes a ring parts nothing.
    if (!cut)
      return {
        hasBattery: this.batteries.length > 0,
        hasLoad: this.#loads.length > 0,
        loads: () => this.#loads,
      }
    const { from, to } = cut
    const isBeyond = cut.beyond === end
    const has = (upTo: readonly number[]): boolean => {
      const inside = (upTo[to] ?? 0) - (upTo[from] ?? 0)
      return (isBeyond ? inside : (upTo[this.#reached.length] ?? 0) - inside) > 0
    }
    const reachedThere = () =>
      isBeyond ? this.#reached.slice(from, to) : [...this.#reached.slice(0, from), ...this.#reached.slice(to)]
    return {
      hasBattery: has(this.#batteriesTo),
      hasLoad: has(this.#loadsTo),
      loads: () => (!isBeyond && from === to ? this.#loads : distinct(reachedThere().filter(isLoad))),
    }
  }
}

const counted = (reached: readonly Block[], isOne: (block: Block) => boolean): readonly number[] => {
  const counts = [0]
  for (const [i, block] of reached.entries()) counts.push((counts[i] ?? 0) + (isOne(block) ? 1 : 0))
  return counts
}

/** A cable that is the only way to what lies beyond it: `reached[from]` up to `reached[to]`. */
interface Cut {
  readonly beyond: Block
  readonly from: number
  readonly to: number
}

interface Walked {
  readonly reached: Block[]
  readonly cuts: Map<Block, Cut>
  readonly isOpen: boolean
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

/** Walks everything along DC cables from a block, and finds the cables that are the only way to what lies behind them (Tarjan's bridges). */
function walk(start: Block, network: Network, visited: Map<Block, number>): Walked {
  const reached: Block[] = []
  const cuts = new Map<Block, Cut>()
  let isOpen = false
  const visit = (block: Block, by: Joint | undefined): Visit => {
    const index = visited.size
    visited.set(block, index)
    const isWithin = network.isWithin(block)
    isOpen ||= !isWithin
    const from = reached.length
    if (isLoad(block)) reached.push(block)
    return { block, by, joints: isWithin ? network.dcAt(block) : [], index, low: index, from, next: 0 }
  }
  const way = [visit(start, undefined)]
  for (let at = way.at(-1); at; at = way.at(-1)) {
    const joint = at.joints[at.next++]
    if (joint) {
      const other = joint === at.by ? undefined : joint.ends.find((end) => end !== at?.block)
      if (!other) continue
      if (endsWay(other)) {
        cuts.set(joint.cable, { beyond: other, from: reached.length, to: reached.length + 1 })
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
    if (at.low > before.index) cuts.set(at.by.cable, { beyond: at.block, from: at.from, to: reached.length })
  }
  return { reached, cuts, isOpen }
}

/** DC cables and what they join: those that can end in one drive, or all of the file. */
class Network {
  readonly #all: readonly Joints[]
  readonly isWithin: (block: Block) => boolean
  readonly #islands = new Map<Block, Island>()

  /** The islands are walked in one order, whoever asks first. */
  constructor(all: readonly Joints[], starts: readonly Block[], isWithin: (block: Block) => boolean) {
    this.#all = all
    this.isWithin = isWithin
    for (const start of starts) {
      if (endsWay(start) || this.#islands.has(start) || this.dcAt(start).length === 0) continue
      const visited = new Map<Block, number>()
      const island = new Island(walk(start, this, visited))
      for (const block of visited.keys()) this.#islands.set(block, island)
    }
  }

  dcAt(block: Block): readonly Joint[] {
    const [one = [], ...more] = this.#all.flatMap(({ dcAt }) => {
      const joints = dcAt.get(block)
      return joints ? [joints] : []
    })
    return more.length === 0 ? one : [one, ...more].flat()
  }

  /** Undefined for a block at which no DC cable ends. */
  island(block: Block): Island | undefined {
    return this.#islands.get(block)
  }

  /** Throws where the ends of a cable cannot be read: it may be one that leads here. */
  mustBeRead(but: Block | undefined): void {
    for (const { unread } of this.#all) for (const { cable, error } of unread) if (cable !== but) throw error
  }
}

export function driveOf(block: Block): Block | undefined {
  let drive: Block | undefined = block
  while (drive && drive.kind !== 'drive') drive = drive.parent
  return drive
}

const endsIn = ({ dc }: Joints): readonly Block[] => dc.flatMap(({ ends }) => ends)

const networkOfDrive = plan((drive, lookup) => {
  const own = jointsOfDrive(drive, lookup)
  const starts = [...endsIn(own), ...drive.children]
  return new Network([own, lookup.ofFile(sharedJoints)], starts, (block) => driveOf(block) === drive)
})

const networkOfFile = ({ ofFile }: FileLookup): Network => {
  const all = ofFile(allJoints)
  return new Network([all], endsIn(all), () => true)
}

/** The part of the DC network at a block, all cables considered but one. */
function islandAt(block: Block, but: Block | undefined, lookup: Lookup): Island | undefined {
  const drive = driveOf(block)
  const own = drive && networkOfDrive(drive, lookup)
  const network = !own || own.island(block)?.isOpen ? lookup.ofFile(networkOfFile) : own
  network.mustBeRead(but)
  return network.island(block)
}

const none: readonly Block[] = []

/** The batteries that DC cables lead to from a block: the same list for all that hang together. */
export function batteriesAlong(block: Block, but: Block | undefined, lookup: Lookup): readonly Block[] {
  if (endsWay(block)) return isBattery(block) ? [block] : none
  return islandAt(block, but, lookup)?.batteries ?? none
}

/** What can be reached from one end of a cable without it. */
export function sideOf(cable: Block, end: Block, lookup: Lookup): Side {
  const itself: Side = {
    hasBattery: isBattery(end),
    hasLoad: isLoad(end),
    loads: () => (isLoad(end) ? [end] : none),
  }
  return endsWay(end) ? itself : (islandAt(end, cable, lookup)?.side(cable, end) ?? itself)
}

/** Motors that phase cables lead to from a controller. */
export function motorsAlong(controller: Block, lookup: Lookup): readonly Block[] {
  const drive = driveOf(controller)
  const joints = drive
    ? [jointsOfDrive(drive, lookup), lookup.ofFile(sharedJoints)]
    : [lookup.ofFile(allJoints)]
  for (const { unread } of joints) for (const { error } of unread) throw error
  return joints.flatMap(({ motorsAt }) => motorsAt.get(controller) ?? none)
}
