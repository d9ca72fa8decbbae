import { storedEnergy } from '../../../engineering/electrical/stored-energy.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { dangerousFrom } from '../../common/dangers.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { highestOfBank } from '../../electrical/plans/banks-around.ts'
import { suppliesOf } from '../../electrical/plans/controller-supply.ts'

/** What a controller holds when it is switched off. SI. */
export interface Charge {
  readonly capacitance: number
  readonly voltage: number
  readonly energy: number
  /** The voltage is only what the motor needs: the energy may be more. */
  readonly isLeast: boolean
}

/** The DC that a motor needs at least, V: the crest of its rated voltage. */
export function needOf(motor: Block): number | undefined {
  const rms = factOf(motor, 'motor.voltage')?.value
  return rms === undefined ? undefined : Math.SQRT2 * rms
}

/** The highest voltage that can stand at a controller, V: of what feeds it, else of what it accepts. */
function highestAt(controller: Block, lookup: Lookup): number | undefined {
  const volts = suppliesOf(controller, lookup).map(({ battery }) => highestOfBank(battery))
  if (volts.includes(undefined)) return undefined
  const fed = volts.flatMap((volt) => volt ?? [])
  return greatest(fed) ?? factOf(controller, 'controller.input')?.value.high
}

const unstated = (fact: string) => failed({ type: 'unsaid', words: `The job does not state its ${fact}` })

/** The charge of a controller, or why it cannot be told. What the motors need is the least that it can be charged to: a small charge at that
 * proves nothing. */
export function chargeOf(controller: Block, lookup: Lookup): Outcome<Charge> {
  const capacitance = factOf(controller, 'controller.capacitance')?.value
  if (capacitance === undefined) return unstated('capacitance')
  const highest = highestAt(controller, lookup)
  const motors = controller.parent ? childrenOf(controller.parent, 'motor') : []
  const voltage = highest ?? greatest(motors.flatMap((motor) => needOf(motor) ?? []))
  if (voltage === undefined) return unstated('voltage')
  const energy = storedEnergy({ capacitance, voltage })
  const isLeast = highest === undefined
  return isLeast && energy < dangerousFrom('stored-charge')
    ? unstated('voltage')
    : ok({ capacitance, voltage, energy, isLeast })
}
