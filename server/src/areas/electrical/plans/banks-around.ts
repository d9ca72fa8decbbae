import { type Block, childrenOf } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { distinctStrings, stringOf } from '../../common/battery-string.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { highestOfString, onCharge } from '../../common/string-facts.ts'

/** The highest voltage of the string that a battery is in, V: of its window, else `overNominal` times nominal; undefined where it is not known. */
export function highestOfBank(battery: Block, lookup: Lookup, overNominal = onCharge): number | undefined {
  try {
    return highestOfString(stringOf(battery, lookup), overNominal)
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** The highest voltage of some banks where it is known, V. */
function highestOf(batteries: readonly Block[], from: FileLookup['from']): readonly number[] {
  const [first] = batteries
  const strings = first ? distinctStrings(batteries, from(first)) : []
  const highest = greatest(strings.flatMap((battery) => highestOfBank(battery, from(battery)) ?? []))
  return highest === undefined ? [] : [highest]
}

/** Worked out once for all drives that the banks may feed. */
const highestInFile = ({ ofKind, from }: FileLookup): readonly number[] => highestOf(ofKind('battery'), from)
const banksOfFile = ({ ofKind }: FileLookup): ReadonlySet<BlockId> => new Set(ofKind('battery').map(idOf))

/** The batteries of the file that may feed a drive, each of which is warned of itself: whether there are any, and the highest voltage that is known,
 * V; and the one that feeds it from another file. */
export function batteriesAround(drive: Block, lookup: Lookup) {
  const own = childrenOf(drive, 'battery')
  const inFile = lookup.ofFile(banksOfFile)
  const near = lookup.near('battery')
  return {
    hasOwn: own.length + inFile.size > 0,
    highest: [...highestOf(own, lookup.from), ...lookup.ofFile(highestInFile)],
    elsewhere: near && !own.includes(near) && !inFile.has(idOf(near)) ? near : undefined,
  }
}
