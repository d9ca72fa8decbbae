import type { Closure } from '../../../engineering/alignment/closure.ts'
import { formatLength, formatLimit } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'

/** How far readings of one round disagree, and what the gauge explains of it. `what`: `gaps`, as `formatRound` has it. */
export function formatOpen(
  { opposite, difference, allowed }: Extract<Closure, { state: 'open' }>,
  what: string,
  system: UnitSystem,
): string {
  const figures = `${formatLength(difference, system)}; the gauge explains ${formatLimit(allowed, system)}`
  return opposite
    ? `The ${what} do not close: sums of opposite pairs differ by ${figures}.`
    : `The ${what} do not close: they are off by ${figures}. No position of the machine fits them all; that is how far off the four worst are.`
}
