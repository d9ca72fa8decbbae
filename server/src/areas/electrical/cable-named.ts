import { factOf, type Place } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'

/** Where the fuse or breaker at the finding names the cable that it protects. */
export function cableNamed({ block }: Lookup): readonly { readonly at: Place; readonly message: string }[] {
  const protects = factOf(block, 'protection.protects')
  return protects ? [{ at: protects.at, message: 'the cable it protects' }] : []
}
