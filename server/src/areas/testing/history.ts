import type { Reported } from '../../checks/check.ts'
import type { Lookup } from '../../store/lookup.ts'
import { replacedBy } from './plans/test-log.ts'

/** Findings about what was tested. Once a later record of the same kind counts, they are history. */
export function unlessReplaced(lookup: Lookup, found: readonly Reported[]): readonly Reported[] {
  const later = found.length > 0 ? replacedBy(lookup.block, lookup) : undefined
  if (later === undefined) return found
  const { name = 'a later one' } = lookup.blockOf(later)
  return found.map((one) => ({
    ...one,
    severity: 'information',
    detail: `${one.detail ? `${one.detail} ` : ''}The later test ${name} counts now.`,
  }))
}
