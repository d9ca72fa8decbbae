import { getOrInsert } from '../../../common/get-or-insert.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { distinctStrings, stringOf } from '../../common/battery-string.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { endsOf } from './cable-circuit.ts'
import { batteriesAlong } from './dc-sides.ts'
import { heatAround } from './fuse-ambient.ts'
import { fusesIn } from './let-through.ts'
import { dcCablesAt } from './through-current.ts'

/** Settings of what a controller takes from its batteries, and of what it gives back to them. */
const limits = ['controller.input-current-limit', 'controller.charge-limit'] as const
type LimitFact = (typeof limits)[number]
type PermittedFact = 'battery.current' | 'battery.peak-current' | 'battery.charge-current'

/** The batteries that feed a controller: those that its cables come to, else the one that goes with it. None where a cable could not be read. */
function batteriesOf(controller: Block, lookup: Lookup): readonly BlockId[] {
  const reached = readable(() => batteriesAlong(controller, undefined, lookup))
  if (!reached || reached.length > 0) return reached ?? []
  const near = controller.parent && lookup.near('battery')
  return near ? [idOf(near)] : []
}

/** Controllers that state each limit, by the first battery that feeds them: all that hang together have the same list. */
function statingByBank({ ofKind, from }: FileLookup): ReadonlyMap<string, readonly BlockId[]> {
  const inDrives = ofKind('drive').flatMap((drive) => childrenOf(drive, 'controller'))
  const stating = new Map<string, BlockId[]>()
  for (const controller of [...inDrives, ...ofKind('controller')])
    for (const limit of limits.filter((one) => factOf(controller, one) !== undefined)) {
      const [first] = batteriesOf(controller, from(controller))
      if (first !== undefined)
        getOrInsert(stating, limitOfBank(limit, first), (): BlockId[] => []).push(idOf(controller))
    }
  return stating
}

const limitOfBank = (limit: LimitFact, first: BlockId): string => `${limit} ${first}`

/** The controllers on the batteries of a controller that state a limit, itself first where it does; none where another comes before it in the file:
 * what they take together is found once. */
export function limitedTogether(controller: Block, limit: LimitFact, lookup: Lookup): readonly Block[] {
  const [first] = batteriesOf(controller, lookup)
  const stating =
    first === undefined ? [] : (lookup.ofFile(statingByBank).get(limitOfBank(limit, first)) ?? [])
  return stating[0] === idOf(controller) ? stating.map(lookup.blockOf) : []
}

/** What the batteries of a controller permit together, A: of each string the least of its batteries. Undefined where one string does not state it. */
export function permittedAt(controller: Block, fact: PermittedFact, lookup: Lookup): number | undefined {
  return readable(() => {
    const strings = distinctStrings(batteriesOf(controller, lookup).map(lookup.blockOf), lookup)
    if (strings.length === 0) return undefined
    return strings.reduce<number | undefined>((sum, head) => {
      const each = least(stringOf(head, lookup).flatMap((battery) => factOf(battery, fact)?.value ?? []))
      return sum === undefined || each === undefined ? undefined : sum + each
    }, 0)
  })
}

function readable<T>(read: () => T): T | undefined {
  try {
    return read()
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** A fuse or breaker with what it carries in the heat around it, A. */
interface Fused {
  readonly device: Block
  readonly carries: number
  readonly assumptions: readonly string[]
}

/** The fuses in the DC cables of a controller, of each cable the smallest that is known; cables side by side share the current. Undefined where a cable
 * has none. */
export function fusesBefore(controller: Block, lookup: Lookup): readonly Fused[] | undefined {
  const each = dcCablesAt(controller, lookup).map((id) => smallestIn(lookup.blockOf(id), lookup))
  const known = each.flatMap((one) => one ?? [])
  return known.length > 0 && known.length === each.length ? known : undefined
}

function smallestIn(cable: Block, lookup: Lookup): Fused | undefined {
  const at = lookup.from(cable)
  const ends = endsOf(cable, at).flatMap((end) => (end?.kind === 'protection' ? [end] : []))
  const fuses = [...fusesIn(cable, at).map(lookup.blockOf), ...ends].flatMap((device): readonly Fused[] => {
    const { share, assumptions } = heatAround(device)
    const rating = factOf(device, 'protection.rating')?.value
    return rating === undefined ? [] : [{ device, carries: rating * share, assumptions }]
  })
  const [smallest] = fuses.toSorted((a, b) => a.carries - b.carries)
  return smallest
}
