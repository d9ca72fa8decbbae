import { at, check, theJobFile } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { listed } from '../../../common/listed.ts'
import { motorOf } from '../../plans/motor-of.ts'

export default check({
  id: 'sensor/not-read',
  severity: 'error',
  title: 'Sensor of a kind that the controller does not read',
  why: 'A controller turns ohms into degrees by the curve of one kind. With another kind it reads a wrong temperature, or none. A Pt100 on an input for Pt1000 seems far colder than any winding, so nothing ever trips.',
  source: theJobFile('the sensor input stated at the controller'),
  on: 'sensor',
  needs: { kind: 'sensor.kind' },
  fires: `drive main {
  controller { sensor-input: pt1000, ntc }
  motor {
    sensor winding { kind: pt100 }
#                          ^^^^^ pt1000 or ntc
  }
}`,
  quiet: `drive main {
  controller { sensor-input: pt1000, ntc }
  motor {
    sensor winding { kind: pt1000 }
  }
}`,
  run: ({ kind }, lookup) => {
    const controller = motorOf(lookup.block) && lookup.near('controller')
    const input = controller && factOf(controller, 'controller.sensor-input')
    const words = input?.value.map(({ word }) => word) ?? []
    if (!input || words.includes(kind.value)) return []
    const reads = words.filter((word) => word !== 'none')
    const limit = reads.length === 0 ? 'no sensor' : listed(reads, 'or')
    return [
      at(kind, {
        message: `The sensor is a ${kind.value}; the controller reads ${limit}.`,
        todo: 'Choose a kind that both have, or set the input of the controller to this one.',
        found: kind.value,
        limit,
        related: [{ at: input.at, message: 'what the controller reads' }],
      }),
    ]
  },
})
