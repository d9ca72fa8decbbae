import type { FaultFlow } from '../../../../server/src/engineering/electrical/dc-network.ts'

/** What ngspice says of a network, in the order of its sources, links and draws: V and A. */
export interface Figures {
  readonly drawVoltages: readonly number[]
  readonly sourceCurrents: readonly number[]
  readonly linkCurrents: readonly number[]
  readonly fault: FaultFlow
}
