import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { onCharge } from './cable-protection.ts'

/** The highest voltage of a bank, V: of its window, else as it is on charge; undefined where it is not known. */
export function highestOfBank(battery: Block): number | undefined {
  const nominal = factOf(battery, 'battery.nominal')?.value
  const window = factOf(battery, 'battery.window')?.value
  if (battery.unread.has('window')) return undefined
  const high = window?.high ?? (nominal === undefined ? undefined : onCharge * nominal)
  return high === undefined ? undefined : Math.max(high, nominal ?? 0, window?.low ?? 0)
}

/** The highest voltage of some banks where it is known, V. */
function highestOf(batteries: readonly Block[]): readonly number[] {
  const highest = greatest(batteries.flatMap((battery) => highestOfBank(battery) ?? []))
  return highest === undefined ? [] : [highest]
}

/** Worked out once for all drives that the banks may feed. */
const highestInFile = ({ ofKind }: FileLookup): readonly number[] => highestOf(ofKind('battery'))
const banksOfFile = ({ ofKind }: FileLookup): ReadonlySet<BlockId> => new Set(ofKind('battery').map(idOf))

/** The batteries of the file that may feed a drive, each of which is warned of itself: whether there are any, and the highest voltage that is known,
 * V; and the one that feeds it from another file. */
export function batteriesAround(drive: Block, lookup: Lookup) {
  const own = childrenOf(drive, 'battery')
  const inFile = lookup.ofFile(banksOfFile)
  const near = lookup.near('battery')
  return {
    hasOwn: own.length + inFile.size > 0,
    highest: [...highestOf(own), ...lookup.ofFile(highestInFile)],
    elsewhere: near && !own.includes(near) && !inFile.has(idOf(near)) ? near : undefined,
  }
}
