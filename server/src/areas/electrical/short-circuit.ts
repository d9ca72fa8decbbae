import { type Context, published } from '../../checks/check.ts'
import { bankShortCircuitCurrent } from './plans/bank-fault.ts'

export const shortCircuitSource = published(
  'ABYC E-11 as quoted in a public note: at least the short-circuit current that the maker of the battery states; else voltage over internal resistance',
)

/** What the batteries can drive through a short circuit behind the fuse or breaker the context stands at; undefined where it cannot be told. */
export function shortCircuit(context: Context): ReturnType<typeof bankShortCircuitCurrent> {
  const cable = context.referred('protects')
  return cable && bankShortCircuitCurrent(cable, context.from(cable))
}
