import { getOrInsert } from '../../common/get-or-insert.ts'
import { SamePlaces } from '../../common/same-places.ts'
import { type Block, childrenOf, factOf } from '../../job/model.ts'
import { idOf } from '../../store/block-by-id.ts'
import type { BlockId } from '../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../store/lookup.ts'
import { plan } from '../../store/plan.ts'
import { Unreadable } from './stated-fact.ts'

/** Why batteries that cables join in series are no string. */
export type StringFault =
  /** The last one is joined to the first: a short circuit. */
  | { readonly type: 'ring' }
  /** Two cables in series at one pole of it. */
  | { readonly type: 'branch'; readonly battery: BlockId; readonly pole: 'positive' | 'negative' }
  /** Cables of both poles, or devices, at several of them. */
  | { readonly type: 'several'; readonly batteries: readonly BlockId[] }
  /** A cable of one pole is at a battery that is not at that end. */
  | { readonly type: 'not-an-end'; readonly battery: BlockId; readonly pole: 'positive' | 'negative' }
  /** The `pole` of a cable between them cannot be used as written. */
  | { readonly type: 'unread' }

/** Batteries that cables join in series, the one at the positive end first. */
export interface Joined {
  readonly members: readonly BlockId[]
  readonly fault?: StringFault
}

/** A cable in series: from the negative of one battery to the positive of the next. */
interface Link {
  readonly from: BlockId
  readonly to: BlockId
  readonly isUnread: boolean
}

interface AtBatteries {
  readonly links: readonly Link[]
  /** Where a cable of both poles, or a device, is at a battery. */
  readonly bothPoles: readonly BlockId[]
  /** Where a cable of one pole is. */
  readonly onePole: readonly { readonly battery: BlockId; readonly pole: 'positive' | 'negative' }[]
}

const deviceKinds = ['protection', 'isolator', 'contactor'] as const

/** Whether a cable joins the negative of one battery to the positive of the next. */
export const isSeries = (cable: Block): boolean => factOf(cable, 'cable.pole')?.value === 'series'

function atBatteries(
  ofKind: (kind: string) => readonly Block[],
  from: (block: Block) => Lookup,
): AtBatteries {
  const links: Link[] = []
  const bothPoles: BlockId[] = []
  const onePole: AtBatteries['onePole'][number][] = []
  const endsOf = (block: Block) => (['from', 'to'] as const).map((end) => from(block).referred(end))
  const batteriesAt = (block: Block) =>
    endsOf(block).flatMap((end) => (end?.kind === 'battery' ? [idOf(end)] : []))
  for (const cable of ofKind('cable')) {
    const batteries = batteriesAt(cable)
    const [one, other] = batteries
    const isUnread = cable.unread.has('pole')
    if (one !== undefined && other !== undefined && one !== other && (isUnread || isSeries(cable)))
      links.push({ from: one, to: other, isUnread })
    const pole = factOf(cable, 'cable.pole')?.value
    if (!isUnread && pole === undefined) bothPoles.push(...batteries)
    else if (pole === 'positive' || pole === 'negative')
      onePole.push(...batteries.map((battery) => ({ battery, pole })))
  }
  for (const kind of deviceKinds) for (const device of ofKind(kind)) bothPoles.push(...batteriesAt(device))
  return { links, bothPoles, onePole }
}

const atBatteriesOfDrive = plan((drive, { from }) => atBatteries((kind) => childrenOf(drive, kind), from))
const atShared = ({ ofKind, from }: FileLookup) => atBatteries(ofKind, from)

/** The strings of a file by the batteries in them; none for a battery that no cable joins in series. */
export function stringsOfFile({ ofKind, ofFile, from }: FileLookup): ReadonlyMap<BlockId, Joined> {
  const all = [ofFile(atShared), ...ofKind('drive').map((drive) => atBatteriesOfDrive(drive, from(drive)))]
  const links = all.flatMap((one) => one.links)
  if (links.length === 0) return new Map()
  const same = new SamePlaces()
  for (const { from: one, to } of links) same.join(one, to)
  const linksOf = new Map<string, Link[]>()
  for (const link of links) getOrInsert(linksOf, same.of(link.from), (): Link[] => []).push(link)
  const bothPoles = new Map<string, Set<BlockId>>()
  for (const battery of all.flatMap((one) => one.bothPoles))
    getOrInsert(bothPoles, same.of(battery), () => new Set<BlockId>()).add(battery)
  const onePole = new Map<string, AtBatteries['onePole'][number][]>()
  for (const one of all.flatMap((found) => found.onePole))
    getOrInsert(onePole, same.of(one.battery), (): AtBatteries['onePole'][number][] => []).push(one)
  return new Map(
    [...linksOf].flatMap(([place, inside]) => {
      const joined = joinedBy(inside, [...(bothPoles.get(place) ?? [])], onePole.get(place) ?? [])
      return joined.members.map((member) => [member, joined])
    }),
  )
}

function joinedBy(
  links: readonly Link[],
  bothPoles: readonly BlockId[],
  onePole: AtBatteries['onePole'],
): Joined {
  const next = new Map<BlockId, BlockId>()
  const before = new Map<BlockId, BlockId>()
  const branches: StringFault[] = []
  for (const { from, to } of links) {
    // Two cables between the same poles carry one current.
    if (next.get(from) === to) continue
    if (next.has(from)) branches.push({ type: 'branch', battery: from, pole: 'negative' })
    else if (before.has(to)) branches.push({ type: 'branch', battery: to, pole: 'positive' })
    next.set(from, to)
    before.set(to, from)
  }
  const all = [...new Set(links.flatMap(({ from, to }) => [from, to]))]
  const unread: StringFault[] = links.some(({ isUnread }) => isUnread) ? [{ type: 'unread' }] : []
  const [fault] = [...unread, ...branches]
  if (fault) return { members: all, fault }
  const first = all.find((battery) => !before.has(battery))
  if (first === undefined) return { members: all, fault: { type: 'ring' } }
  const members: BlockId[] = []
  for (let at: BlockId | undefined = first; at !== undefined; at = next.get(at)) members.push(at)
  if (bothPoles.length > 1) return { members, fault: { type: 'several', batteries: bothPoles } }
  const ends = { positive: members[0], negative: members.at(-1) }
  const off = onePole.find(({ battery, pole }) => battery !== ends[pole])
  return off ? { members, fault: { type: 'not-an-end', ...off } } : { members }
}

/** The batteries that a battery is in series with; undefined where no cable joins it so. */
export const joinedInSeries = plan((battery: Block, lookup: Lookup): Joined | undefined =>
  lookup.ofFile(stringsOfFile).get(idOf(battery)),
)

/** The first battery of the string that a battery is in, which stands for it. */
export const headOf = (battery: Block, lookup: Lookup): Block => {
  const [head] = joinedInSeries(battery, lookup)?.members ?? []
  return head === undefined ? battery : lookup.blockOf(head)
}

/** Each string once, by its first battery. */
export const distinctStrings = (batteries: readonly Block[], lookup: Lookup): readonly Block[] => [
  ...new Set(batteries.map((battery) => headOf(battery, lookup))),
]

/** The batteries of the string that a battery is in, from its positive end on: one alone is a string of one. Throws Unreadable where they cannot be in
 * series as the job says. */
export function stringOf(battery: Block, lookup: Lookup): readonly Block[] {
  const joined = joinedInSeries(battery, lookup)
  if (!joined) return [battery]
  const members = joined.members.map(lookup.blockOf)
  if (joined.fault) throw new Unreadable(`${nameOfString(members)} cannot be in series as written`)
  return members
}

/** `house-1 + house-2`. */
export const nameOfString = (string: readonly Block[]): string =>
  string.map(({ name, kind }) => name ?? kind).join(' + ')
