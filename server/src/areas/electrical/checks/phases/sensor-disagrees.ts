import { at, check, commonPractice } from '../../../../checks/check.ts'
import { turnsOfMap } from '../../../common/ahead-turns.ts'

const job = (map: string, mark = '') => `drive main {
  motor main { power: 15 kW  terminals: U, V, W  turns: clockwise  position-sensor: encoder }
  controller { terminals: A, B, C }
  phase-map {
    ${map}${mark}
  }
}`

export default check({
  id: 'phases/sensor-disagrees',
  severity: 'error',
  title: 'Phases not in the order of the position sensor',
  why: 'A controller that knows the angle of the rotor sends the current to the phases by that angle. With two phases exchanged the motor does not simply turn the other way: it jerks, stalls or takes full current without turning. Phases that are all one place on leave the field a third of a turn off.',
  source: commonPractice(
    'common practice: phase order and sensor order must agree; how to set them is for the maker of the controller',
  ),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: job('A to V, B to U, C to W', '\n#   ^^^^^^^^^^^^^^^^^^^^^^ encoder'),
  quiet: job('A to U, B to V, C to W'),
  run: ({ pairs }, lookup) => {
    const turns = turnsOfMap(lookup)
    if (!turns || turns.ok || turns.fault.type !== 'sensor') return []
    const { order, sensor } = turns.fault
    const isSwapped = order === 'exchanged'
    return [
      at(pairs, {
        // A controller that learns the angle by itself, and an encoder without a mark, bear a shift.
        ...(!isSwapped && { severity: 'warning' as const }),
        message: isSwapped
          ? `Two phases are exchanged, but the motor has a position sensor (${sensor}).`
          : `The phases are shifted, but the motor has a position sensor (${sensor}).`,
        detail: isSwapped
          ? 'With a sensor, exchanged phases are a fault and not a way to reverse the motor.'
          : 'The sequence is right, but the field is 120 electrical degrees off what the sensor says, unless the controller has learned the angle with these connections.',
        todo: 'Connect the phases in the order of the terminals. Set the direction in the controller as its maker says, and write `reversed`.',
        found: isSwapped ? 'exchanged' : 'shifted',
        limit: 'in the order of the terminals',
        assumptions: ['the sensor is set for the phases in the order of both `terminals`'],
      }),
    ]
  },
})
