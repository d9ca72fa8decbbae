import { dischargeTime, touchSafe } from '../../../engineering/electrical/precharge.ts'
import { storedEnergy } from '../../../engineering/electrical/stored-energy.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { stringOf } from '../../common/battery-string.ts'
import { dangerousFrom } from '../../common/dangers.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { chargedAsUsual, isHighStated } from '../../common/string-facts.ts'
import { highestOfBank } from './banks-around.ts'
import { suppliesOf } from './controller-supply.ts'

/** What a controller holds when it is switched off. SI. */
export interface Charge {
  readonly capacitance: number
  readonly voltage: number
  readonly energy: number
  /** The voltage is only what the motor needs: the energy may be more. */
  readonly isLeast: boolean
  readonly assumptions: readonly string[]
}

/** The DC that a motor needs at least, V: the crest of its rated voltage. */
export function needOf(motor: Block): number | undefined {
  const rms = factOf(motor, 'motor.voltage')?.value
  return rms === undefined ? undefined : Math.SQRT2 * rms
}

/** The highest voltage that can stand at a controller, V: of what feeds it, else of what it accepts. Undefined where it is not known. */
export function highestAt(controller: Block, lookup: Lookup) {
  const batteries = suppliesOf(controller, lookup).map(({ battery }) => battery)
  const volts = batteries.map((battery) => highestOfBank(battery, lookup))
  if (volts.includes(undefined)) return undefined
  const fed = greatest(volts.flatMap((volt) => volt ?? []))
  const accepted = factOf(controller, 'controller.input')?.value.high
  if (fed === undefined)
    return (
      accepted !== undefined && {
        voltage: accepted,
        assumptions: ['the battery reaches the highest voltage that the controller accepts: it is not known'],
      }
    )
  const isUsual = batteries.some((battery) => !isHighStated(stringOf(battery, lookup)))
  return { voltage: fed, assumptions: isUsual ? [chargedAsUsual] : [] }
}

const open = (controller: Block, fact: 'capacitance' | 'voltage') =>
  failed({
    type: 'unsaid',
    words: controller.unread.has(fact)
      ? `Its ${fact} cannot be used as written.`
      : `The job does not state its ${fact}.`,
  })

/** The charge of a controller, or why it cannot be told. What the motors need is the least that it can be charged to: a small charge at that
 * proves nothing. */
export function chargeOf(controller: Block, lookup: Lookup): Outcome<Charge> {
  const capacitance = factOf(controller, 'controller.capacitance')?.value
  if (capacitance === undefined) return open(controller, 'capacitance')
  const highest = highestAt(controller, lookup)
  const motors = controller.parent ? childrenOf(controller.parent, 'motor') : []
  const voltage = highest ? highest.voltage : greatest(motors.flatMap((motor) => needOf(motor) ?? []))
  if (voltage === undefined) return open(controller, 'voltage')
  const energy = storedEnergy({ capacitance, voltage })
  const isLeast = !highest
  return isLeast && energy < dangerousFrom('stored-charge')
    ? open(controller, 'voltage')
    : ok({
        capacitance,
        voltage,
        energy,
        isLeast,
        assumptions: highest
          ? highest.assumptions
          : ['it is charged to what the motor needs: the voltage of its battery is not stated'],
      })
}

/** How long a controller stays charged to more than may be touched, s. */
export interface Discharge {
  /** By dry skin. */
  readonly dry: number
  /** By wet skin. */
  readonly wet: number
  readonly resistance: number
  readonly isLeast: boolean
  readonly assumptions: readonly string[]
}

/** The same from its resistance, if the job states that. Precharge and other paths are not counted: the resistance must do alone. */
export function dischargeOf(controller: Block, lookup: Lookup): Discharge | undefined {
  const resistance = factOf(controller, 'controller.discharge-resistance')?.value
  const charge = chargeOf(controller, lookup)
  if (resistance === undefined || !charge.ok) return undefined
  const { capacitance, voltage, isLeast, assumptions } = charge.value
  const until = (to: number) => dischargeTime({ voltage, resistance, capacitance, to })
  return {
    dry: until(touchSafe),
    wet: until(dangerousFrom('live-voltage')),
    resistance,
    isLeast,
    assumptions: [...assumptions, 'its discharge resistance is intact, and nothing charges it meanwhile'],
  }
}
