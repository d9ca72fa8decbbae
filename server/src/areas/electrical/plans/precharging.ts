import {
  closingSurge,
  endVoltage,
  type Precharge,
  peakCurrent,
  peakPower,
  prechargeEnergy,
  timeConstant,
  timeToFraction,
  voltageAfter,
} from '../../../engineering/electrical/precharge.ts'
import type { Block } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { bankShortCircuit } from './bank-fault.ts'
import { highestOfBank } from './banks-around.ts'
import { highestAt } from './controller-charge.ts'
import { suppliesOf } from './controller-supply.ts'
import { prechargeCircuit, unsaid } from './precharge-circuit.ts'

/** What happens when a precharge works, SI. */
export interface Precharging {
  readonly controllers: readonly BlockId[]
  readonly capacitance: number
  /** The highest voltage of the batteries. */
  readonly voltage: number
  readonly timeConstant: number
  readonly peakCurrent: number
  readonly peakPower: number
  /** The heat of one precharge in the resistor. */
  readonly energy: number
  /** Until the switch closes; undefined if the job does not say when it does, or if it never does. */
  readonly closesAfter: number | undefined
  /** It never reaches the voltage at which the switch closes. */
  readonly never: boolean
  /** The highest part of the voltage that it comes to. */
  readonly end: number
  /** What is left across the switch when it closes, V. */
  readonly difference: number | undefined
  /** The current when it closes, at most. Undefined where the batteries do not state their resistance. */
  readonly surge: number | undefined
  readonly assumptions: readonly string[]
}

/** What the batteries of some controllers have as resistance at least, Ω: side by side. Cables are not counted. Undefined where one is not known. */
function resistanceOfBanks(controllers: readonly Block[], lookup: Lookup): number | undefined {
  const banks = new Map(
    controllers.flatMap((controller) =>
      suppliesOf(controller, lookup.from(controller)).map(({ battery }) => [idOf(battery), battery] as const),
    ),
  )
  let conductance = 0
  for (const battery of banks.values()) {
    const [volts, amps] = [highestOfBank(battery, lookup), bankShortCircuit(battery, lookup)?.highest]
    if (volts === undefined || amps === undefined) return undefined
    conductance += amps / volts
  }
  return conductance > 0 ? 1 / conductance : undefined
}

/** How a precharge works with what it charges, or why that cannot be told. */
export function prechargingOf(precharge: Block, lookup: Lookup): Outcome<Precharging> {
  try {
    return work(precharge, lookup)
  } catch (error) {
    if (error instanceof OutOfRange) return failed({ type: 'impossible', words: error.message })
    throw error
  }
}

function work(precharge: Block, lookup: Lookup): Outcome<Precharging> {
  const circuit = prechargeCircuit(precharge, lookup)
  if (!circuit.ok) return circuit
  const { controllers, ...parts } = circuit.value
  const highest = controllers.map((one) => highestAt(one, lookup.from(one)))
  const voltages = highest.flatMap((one) => (one ? [one.voltage] : []))
  if (voltages.length < controllers.length)
    return unsaid('The job does not state the voltage of the battery.')
  const given: Precharge = { voltage: Math.max(...voltages), ...parts }
  const closing = closingOf(precharge, given)
  const banks = resistanceOfBanks(controllers, lookup)
  return ok({
    controllers: controllers.map(idOf),
    capacitance: parts.capacitance,
    voltage: given.voltage,
    timeConstant: timeConstant(given),
    peakCurrent: peakCurrent(given),
    peakPower: peakPower(given),
    // With nothing across it the heat comes to ½CV² and no more.
    energy: prechargeEnergy(
      given,
      parts.across !== undefined ? (closing.closesAfter ?? 5 * timeConstant(given)) : 1e9,
    ),
    end: endVoltage(given) / given.voltage,
    surge:
      banks === undefined || closing.difference === undefined
        ? undefined
        : closingSurge({ difference: closing.difference, loop: banks }),
    ...closing,
    assumptions: [
      ...new Set(highest.flatMap((one) => (one ? one.assumptions : []))),
      ...(controllers.length > 1 ? ['all controllers that have no other precharge are charged at once'] : []),
    ],
  })
}

/** When the switch closes, and what is then left across it. Where the job states both, the voltage counts; `precharge/time` holds
 * the time against it. */
function closingOf(
  precharge: Block,
  given: Precharge,
): Pick<Precharging, 'closesAfter' | 'never' | 'difference'> {
  const fraction = statedFact(precharge, 'precharge.closes-at')
  const after = statedFact(precharge, 'precharge.closes-after')
  if (fraction !== undefined) {
    // Nothing comes to all of it.
    const time = fraction < 1 ? timeToFraction(given, fraction) : undefined
    return time === undefined
      ? { closesAfter: undefined, never: true, difference: undefined }
      : { closesAfter: time, never: false, difference: (1 - fraction) * given.voltage }
  }
  return after === undefined
    ? { closesAfter: undefined, never: false, difference: undefined }
    : { closesAfter: after, never: false, difference: given.voltage - voltageAfter(given, after) }
}
