import { memoizeByIdentity } from '../../../common/memoize-by-identity.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { onCharge } from './cable-protection.ts'

/** The highest voltage of a bank, V: of its window, else as it is on charge; undefined where it is not known. */
export function highestOfBank(battery: Block): number | undefined {
  const nominal = factOf(battery, 'battery.nominal')?.value
  const window = factOf(battery, 'battery.window')?.value
  if (battery.unread.has('window')) return undefined
  const high = window?.high ?? (nominal === undefined ? undefined : onCharge * nominal)
  return high === undefined ? undefined : Math.max(high, nominal ?? 0, window?.low ?? 0)
}

/** The highest voltage of each of some banks where it is known, worked out once for all drives that they may feed. */
export const highestOfBanks = memoizeByIdentity((batteries: readonly Block[]): readonly number[] => {
  const known = batteries.flatMap((battery) => highestOfBank(battery) ?? [])
  const highest = greatest(known)
  return highest === undefined ? [] : [highest]
})
const asSet = memoizeByIdentity((blocks: readonly Block[]): ReadonlySet<Block> => new Set(blocks))

/** The batteries of the file that may feed a drive, each of which is warned of itself, and the one that feeds it from another file. */
export function batteriesOf(drive: Block, lookup: Lookup) {
  const own = [childrenOf(drive, 'battery'), lookup.ofKind('battery')].filter(({ length }) => length > 0)
  const near = lookup.near('battery')
  return { own, elsewhere: near && !own.some((banks) => asSet(banks).has(near)) ? near : undefined }
}
