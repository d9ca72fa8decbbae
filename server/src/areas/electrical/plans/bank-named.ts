import { type Block, childrenOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { endsOf } from './cable-circuit.ts'
import { batteriesReached } from './cable-feed.ts'
import { distinct } from './dc-sides.ts'

/** The banks that the cables of a drive lead to, where the drive names another one that no cable links to them. None where that is not certain: a
 * cable there has an end that is not known. */
export function banksInstead(drive: Block, lookup: Lookup): readonly Block[] {
  const named = lookup.referred('battery')
  if (!named) return []
  try {
    const reached = distinct(
      childrenOf(drive, 'cable').flatMap((cable) => banksOfLoad(cable, lookup.from(cable))),
    )
    if (reached.length === 0 || reached.includes(named)) return []
    const groups = lookup.ofFile(groupsOfFile)
    const own = groups.get(idOf(named))
    const others = reached.map((bank) => groups.get(idOf(bank)))
    return own?.isUnfinished || others.some((group) => group?.isUnfinished || group === own) ? [] : reached
  } catch (error) {
    if (error instanceof Unreadable) return []
    throw error
  }
}

/** The banks that a cable leads to, where it ends at a controller or a motor. */
function banksOfLoad(cable: Block, lookup: Lookup): readonly Block[] {
  const isAtLoad = endsOf(cable, lookup).some((end) => end?.kind === 'controller' || end?.kind === 'motor')
  return isAtLoad ? batteriesReached(cable, lookup) : []
}

/** Blocks that cables join, through batteries too, whatever the cables carry. */
interface Group {
  /** One of its cables has an end that is not known. */
  readonly isUnfinished: boolean
}

/** Every block at which a cable ends, with its group. Throws where the ends of a cable cannot be read: it may be one that links two groups. */
function groupsOfFile({ ofKind, from: asked }: FileLookup): ReadonlyMap<BlockId, Group> {
  const joined = new Map<BlockId, BlockId[]>()
  const unfinished = new Set<BlockId>()
  const drives = ofKind('drive').flatMap((drive) => childrenOf(drive, 'cable'))
  for (const cable of [...drives, ...ofKind('cable')]) {
    const [from, to] = endsOf(cable, asked(cable)).map((end) => end && idOf(end))
    for (const [end, other] of [
      [from, to],
      [to, from],
    ]) {
      if (!end) continue
      const known = joined.get(end) ?? []
      joined.set(end, known)
      if (other) known.push(other)
      else unfinished.add(end)
    }
  }
  const groups = new Map<BlockId, Group>()
  for (const start of joined.keys()) {
    if (groups.has(start)) continue
    const members = new Set([start])
    for (const block of members) for (const other of joined.get(block) ?? []) members.add(other)
    const group = { isUnfinished: [...members].some((block) => unfinished.has(block)) }
    for (const block of members) groups.set(block, group)
  }
  return groups
}
