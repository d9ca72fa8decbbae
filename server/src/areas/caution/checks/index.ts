// Made by `npm run generate` from the files beside it.

import type { Check } from '../../../checks/check.ts'
import cautionHeavyMachine from './heavy-machine.ts'
import cautionLiveVoltage from './live-voltage.ts'
import cautionOpenHull from './open-hull.ts'
import cautionShortCircuit from './short-circuit.ts'
import cautionStoredCharge from './stored-charge.ts'
import cautionTurningShaft from './turning-shaft.ts'

export const checks: readonly Check[] = [
  cautionHeavyMachine,
  cautionLiveVoltage,
  cautionOpenHull,
  cautionShortCircuit,
  cautionStoredCharge,
  cautionTurningShaft,
]
