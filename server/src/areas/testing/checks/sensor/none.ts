import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { childrenOf, factOf } from '../../../../job/model.ts'

/** From this power on, W, a winding without a sensor is asked about, whatever the controller can read. Common practice, no source. */
const largeEnough = 4000

export default check({
  id: 'sensor/none',
  severity: 'warning',
  title: 'Motor without a temperature sensor',
  why: 'Without a sensor in its winding nobody knows how hot a motor is. The controller can neither warn, nor reduce the current, nor switch off in time.',
  source: commonPractice('a sensor in the winding from 4 kW on: common practice, no source'),
  on: 'motor',
  fires: `job "Launch" { vessel: "Launch 07" }
drive main {
  motor propulsion { power: 15 kW }
# ^^^^^^^^^^^^^^^^ no temperature sensor
}`,
  quiet: `job "Launch" { vessel: "Launch 07" }
drive main {
  motor propulsion {
    power: 15 kW
    sensor winding { kind: pt1000 }
  }
}`,
  run: (_facts, lookup) => {
    const { block, status } = lookup
    if (status === undefined || lookup.isTaken || block.likeUnknown) return []
    if (childrenOf(block, 'sensor').length > 0) return []
    const controller = lookup.near('controller')
    const inputs = controller && factOf(controller, 'controller.sensor-input')
    const reads = inputs?.value.map(({ word }) => word).filter((word) => word !== 'none') ?? []
    const power = factOf(block, 'motor.power')?.value ?? 0
    if (reads.length === 0 && power < largeEnough) return []
    return [
      atHead(block, {
        message: 'The motor has no temperature sensor.',
        detail:
          reads.length > 0
            ? `The controller can read ${reads.join(', ')}.`
            : 'The winding can overheat unnoticed.',
        todo: 'Add the sensor as a block in the motor, or ask the maker of the motor for one.',
        ...(inputs &&
          reads.length > 0 && { related: [{ at: inputs.at, message: 'what the controller reads' }] }),
      }),
    ]
  },
})
