import { endVoltage, timeConstant, timeToFraction } from '../../../engineering/electrical/precharge.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { prechargeCircuit, prechargesOf } from '../../electrical/plans/precharge-circuit.ts'
import { prechargingOf } from '../../electrical/plans/precharging.ts'
import { partOf } from './test-log.ts'

/** Capacitors differ by 20 % from what is printed on them, resistors by 10 %. Common practice, no source. */
const factor = 1.5

/** What a voltage may be off by, as a share of that of the battery. Near the end the curve is so flat that it decides. Common practice, no source. */
const reading = 0.01

/** A precharge as it was timed, held against its resistance and the capacitance. SI. */
export interface PrechargeTime {
  readonly time: number
  readonly least: number
  readonly most: number
  /** The share of the voltage of the battery that it ended at, and the highest that it can come to. */
  readonly share: number
  readonly end: number
  /** It ended above what the discharge resistance leaves of the voltage. */
  readonly isBeyond: boolean
}

/** Undefined where a fact of it is not known, or where several precharges, or one that is built in, charge the controller. */
export const prechargeTimeOf = plan((test: Block, lookup: Lookup): PrechargeTime | undefined => {
  try {
    return timed(test, lookup)
  } catch (error) {
    if (error instanceof OutOfRange) return undefined
    throw error
  }
})

function timed(test: Block, lookup: Lookup): PrechargeTime | undefined {
  const controller = partOf(lookup)
  if (factOf(test, 'test.kind')?.value !== 'precharge' || controller?.kind !== 'controller') return undefined
  const [voltage, reached] = [factOf(test, 'test.voltage')?.value, factOf(test, 'test.end-voltage')?.value]
  const time = factOf(test, 'test.time')?.value
  const [precharge, ...more] = prechargesOf(controller, lookup.from(controller))
  if (time === undefined || !voltage || reached === undefined || !precharge || more.length > 0)
    return undefined
  const circuit = prechargeCircuit(precharge, lookup.from(precharge))
  if (!circuit.ok) return undefined
  const given = { voltage, ...circuit.value }
  const end = endVoltage(given) / voltage
  const share = reached / voltage
  const within = Math.min(share, end)
  const [from, to] = [within - reading, within + reading]
  return {
    time,
    least: from > 0 ? (timeToFraction(given, from) ?? 0) / factor : 0,
    most:
      factor * ((to < 1 && timeToFraction(given, to)) || untilClosed(precharge, timeConstant(given), lookup)),
    share,
    end,
    // Both voltages may be off.
    isBeyond: end < 1 && share > end + 2 * reading,
  }
}

/** Of what is charged nothing shows how long it goes on: until the switch closes, at least five time constants. */
function untilClosed(precharge: Block, constant: number, lookup: Lookup): number {
  const work = prechargingOf(precharge, lookup.from(precharge))
  return Math.max(5 * constant, (work.ok && work.value.closesAfter) || 0)
}
