import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { endsOf } from './cable-circuit.ts'
import { sideOf } from './dc-sides.ts'
import { type CaseFlow, caseFlows, flowAssumptions } from './load-cases.ts'

interface LinkCurrent {
  readonly amps: number
  /** The case in which it is largest. */
  readonly name: string
  readonly assumptions: readonly string[]
}

/** The largest current in a cable that has batteries on both sides, of all cases but peaks: what it feeds changes with which of them are on. Undefined
 * where none is known to flow. */
export const linkCurrent = plan((cable: Block, lookup: Lookup): LinkCurrent | undefined => {
  const sides = endsOf(cable, lookup).map((end) => end && sideOf(cable, end, lookup))
  if (!sides.every((side) => side?.hasBattery)) return undefined
  const flows = (['rated', 'alone', 'off'] as const).flatMap((kind) => caseFlows(kind, cable, lookup))
  const [largest] = flows.toSorted((one, other) => amperes(other) - amperes(one))
  return largest && amperes(largest) > 0
    ? { amps: amperes(largest), name: largest.name, assumptions: flowAssumptions(largest) }
    : undefined
})

const amperes = ({ amps = 0 }: CaseFlow): number => amps
