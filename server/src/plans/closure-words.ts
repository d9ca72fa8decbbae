import type { Closure } from '../engineering/alignment/closure.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { saidLength, saidLimit } from '../quantity/said.ts'

/** How far readings of one round disagree, and what the gauge explains of it. `what`: `gaps`, as `sayRound` has it. */
export function sayOpen(
  { opposite, difference, allowed }: Extract<Closure, { state: 'open' }>,
  what: string,
  system: UnitSystem,
): string {
  const how = opposite
    ? 'the sums of opposite pairs differ by'
    : 'the machine cannot stand so that all of them fit within half a step of the gauge. The four that agree least are off by'
  return `The ${what} do not close: ${how} ${saidLength(difference, system)}, and the gauge explains ${saidLimit(allowed, system)}.`
}
