import { published, type Source } from '../../checks/check.ts'
import type { Lookup } from '../../store/lookup.ts'
import { listed } from '../common/listed.ts'
import { bankShortCircuitCurrent } from './plans/bank-fault.ts'
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

/** What the batteries can drive through a short circuit behind the fuse or breaker the lookup is made from; undefined where it cannot be told. */
export function shortCircuit(lookup: Lookup): ReturnType<typeof bankShortCircuitCurrent> {
  const cable = circuitCableOf(lookup.block, lookup)
  return cable && bankShortCircuitCurrent(cable, lookup.from(cable))
}
