import { at, atHead, type Reported } from '../../checks/check.ts'
import type { Lookup } from '../../store/lookup.ts'
import { type Correction, correctionOf } from './plans/correction.ts'
import type { RoundFact } from './plans/readings.ts'

/** What the reading the lookup is made from asks for; undefined when it cannot be worked out, which is a finding of its own. */
export function correction(lookup: Lookup): Correction | undefined {
  const outcome = correctionOf(lookup.block, lookup)
  return outcome.ok ? outcome.value : undefined
}

/** A finding at what the faces, or the rims, were read into, whichever way that was; at the reading where that is not told. */
export function atRead({ block }: Lookup, by: RoundFact | undefined, of: Omit<Reported, 'at'>): Reported {
  const value = by && block.facts.get(by)
  return value ? at(value, of) : atHead(block, of)
}

/** The first of the facts that the reading has. */
export const readInto = ({ block }: Lookup, ...facts: readonly RoundFact[]): RoundFact | undefined =>
  facts.find((fact) => block.facts.has(fact))
