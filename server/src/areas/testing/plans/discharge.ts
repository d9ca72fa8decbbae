import { dischargeTime } from '../../../engineering/electrical/precharge.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { partOf } from './test-log.ts'

export interface Discharge {
  /** Measured, s. */
  readonly time: number
  /** From the first voltage to the last through the discharge resistance of the controller, s. */
  readonly computed: number
}

/** How long a discharge took, and how long it takes by capacitance and discharge resistance. Undefined where one of them is not known, or the voltage does not fall. */
export const dischargeOf = plan((test: Block, lookup: Lookup): Discharge | undefined => {
  const controller = partOf(lookup)
  if (factOf(test, 'test.kind')?.value !== 'discharge' || controller?.kind !== 'controller') return undefined
  const [voltage, to] = [factOf(test, 'test.voltage')?.value, factOf(test, 'test.end-voltage')?.value]
  const time = factOf(test, 'test.time')?.value
  const capacitance = factOf(controller, 'controller.capacitance')?.value
  const resistance = factOf(controller, 'controller.discharge-resistance')?.value
  if (time === undefined || capacitance === undefined || resistance === undefined) return undefined
  // Down to nothing it takes for ever.
  if (voltage === undefined || to === undefined || to < 0.01 || to >= voltage) return undefined
  return { time, computed: dischargeTime({ voltage, to, capacitance, resistance }) }
})
