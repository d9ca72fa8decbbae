import { at, atHead, type Context, type Reported } from '../../checks/check.ts'
import { type Correction, correctionOf } from './plans/correction.ts'
import type { RoundFact } from './plans/readings.ts'

/** What the reading the context stands at asks for; undefined when it cannot be worked out, which is a finding of its own. */
export function correction(context: Context): Correction | undefined {
  const outcome = correctionOf(context.block, context)
  return outcome.ok ? outcome.value : undefined
}

/** A finding at what the faces, or the rims, were read into, whichever way that was; at the reading where that is not told. */
export function atRead({ block }: Context, by: RoundFact | undefined, of: Omit<Reported, 'at'>): Reported {
  const value = by && block.facts.get(by)
  return value ? at(value, of) : atHead(block, of)
}

/** The first of the facts that the reading has. */
export const readInto = ({ block }: Context, ...facts: readonly RoundFact[]): RoundFact | undefined =>
  facts.find((fact) => block.facts.has(fact))
