import { at, check, commonPractice } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { endsOf } from '../../plans/cable-circuit.ts'

export default check({
  id: 'cable/battery-to-motor',
  severity: 'error',
  title: 'Battery connected directly to a motor',
  why: 'A three-phase motor does not turn on DC. Only the resistance of its windings limits the current, so it burns. Its controller must feed it.',
  source: commonPractice('an inverter feeds a three-phase machine, no source'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  wants: { system: 'cable.system' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: main
#       ^^^^ directly
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    place: machinery-space
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2.5 m
    insulation: 105 degC
    place: machinery-space
  }
}`,
  run: ({ from, to, system }, lookup) => {
    const ends = endsOf(lookup.block, lookup)
    const motor = ends.find((end) => end?.kind === 'motor')
    if (!motor || !ends.some((end) => end?.kind === 'battery')) return []
    const marks = factOf(motor, 'motor.terminals')?.value.length
    // A DC motor is one whose cable is said to carry DC, and that has no third terminal.
    if (system?.value === 'dc' && (marks === undefined || marks < 3)) return []
    return [
      at(ends[1] === motor ? to : from, {
        message: 'The cable connects a battery directly to a three-phase motor.',
        todo: 'Connect it to the controller instead. For a DC motor, write `system: dc`.',
      }),
    ]
  },
})
