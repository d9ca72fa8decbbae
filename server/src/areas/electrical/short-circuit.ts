import { published, type Source } from '../../checks/check.ts'
import { leastFault } from '../../engineering/electrical/least-fault.ts'
import { factOf } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { listed } from '../common/listed.ts'
import { type BankFault, bankShortCircuitCurrent } from './plans/bank-fault.ts'
import { faultsAt, type LeastFault } from './plans/faults.ts'
import { circuitCableOf } from './plans/let-through.ts'

export const shortCircuitSource = published(
  'ABYC E-11 as quoted in a public note: at least the short-circuit current that the maker of the battery states; else voltage over internal resistance',
)

export const leastFaultSource: Source = {
  basis: 'from memory',
  text: 'IEC 60269-1: a gG fuse opens for certain from 1.6 times its rating on',
}

/** `Not counted, as it is not known: house.` */
export const formatNotCounted = ({ notCounted }: { readonly notCounted: readonly string[] }): string =>
  notCounted.length === 0 ? '' : ` Not counted, as its own is not known: ${listed(notCounted)}.`

/** What the batteries can drive through a short circuit at or behind the fuse or breaker the lookup is made from. */
interface ShortCircuit extends Omit<BankFault, 'lowest'> {
  /** The one that is hardest to open; undefined where that cannot be told. */
  readonly least: LeastFault | undefined
}

/** Undefined where it cannot be told. Where the network around it is not known, as at the terminals of the batteries. */
export function shortCircuit(lookup: Lookup): ShortCircuit | undefined {
  const cable = circuitCableOf(lookup.block, lookup)
  const bank = cable && bankShortCircuitCurrent(cable, lookup.from(cable))
  if (!bank) return undefined
  const rating = factOf(lookup.block, 'protection.rating')?.value
  const faults = faultsAt(lookup.block, lookup)
  const atTerminals =
    bank.lowest === undefined || rating === undefined
      ? undefined
      : { amps: bank.lowest, opens: leastFault(rating), at: undefined }
  return { ...bank, highest: faults?.highest || bank.highest, least: faults ? faults.least : atTerminals }
}

/** `at the far end of feed`. */
export const whereLeast = ({ at }: LeastFault, lookup: Lookup): string => {
  const cable = at && lookup.blockOf(at)
  return cable ? `at the far end of ${cable.name ?? 'the cable'}` : 'at the fuse or breaker'
}
