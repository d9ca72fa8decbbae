import { factOf, type Place } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'

/** Where the fuse or breaker at the finding names the cable that it is in. */
export function cableNamed({ block }: Lookup): readonly { readonly at: Place; readonly message: string }[] {
  const within = factOf(block, 'protection.in')
  return within ? [{ at: within.at, message: 'the cable it is in' }] : []
}
