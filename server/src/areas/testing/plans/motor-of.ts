import { classTemperature } from '../../../engineering/temperature/thermal-class.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { kelvin } from '../../common/celsius.ts'

/** The motor that a sensor is in. */
export const motorOf = ({ parent }: Block): Block | undefined =>
  parent?.kind === 'motor' ? parent : undefined

/** The temperature that the winding around a sensor stands, K, with its class. */
export function windingLimit(sensor: Block) {
  const motor = motorOf(sensor)
  const thermalClass = motor && factOf(motor, 'motor.thermal-class')
  return thermalClass && { thermalClass, most: kelvin(classTemperature(thermalClass.value)) }
}
