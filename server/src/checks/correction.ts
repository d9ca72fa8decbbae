import { type Correction, correctionOf } from '../plans/alignment.ts'
import type { Context } from './check.ts'

/** What the reading the context stands at asks for; undefined when it cannot be worked out, which is a finding of its own. */
export function correction(context: Context): Correction | undefined {
  const outcome = correctionOf(context.block, context)
  return outcome.ok ? outcome.value : undefined
}
