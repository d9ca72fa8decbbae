import { sensorReading, sensorResistance } from '../../../engineering/temperature/sensor-curve.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { blockPlan } from '../../../store/plan.ts'
import { celsius } from '../../common/celsius.ts'
import { curveOf } from './sensor-curve.ts'

/** How wrong a sensor is read because of its leads. */
export interface LeadError {
  /** Where it is worked out, °C. */
  readonly celsius: number
  /** K, + read too warm. At the end of its range where it is read beyond. */
  readonly error: number
}

/** At the trip of the sensor, else at 100 °C. Undefined where leads, curve or resistance there are not known. */
export const leadErrorOf = blockPlan((sensor: Block): LeadError | undefined => {
  const leads = factOf(sensor, 'sensor.lead-resistance')?.value
  const curve = curveOf(sensor)
  const trip = factOf(sensor, 'sensor.trip')?.value
  const at = trip === undefined ? 100 : celsius(trip)
  const ohms = curve && sensorResistance(curve, at)
  if (leads === undefined || !curve || ohms === undefined) return undefined
  const read = sensorReading(curve, ohms + leads)
  return read && { celsius: at, error: (read.is === 'temperature' ? read.celsius : read.end) - at }
})
