import { at, check, theJobFile } from '../../../../checks/check.ts'
import { endsOf } from '../../plans/cable-circuit.ts'

export default check({
  id: 'cable/battery-not-dc',
  severity: 'error',
  title: 'Battery cable marked as three-phase',
  why: 'A battery gives DC. Its cable is checked as DC and needs a fuse, whatever `system` says.',
  source: theJobFile('what the cable joins'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to', system: 'cable.system' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
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
    system: three-phase
#           ^^^^^^^^^^^ DC
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
    system: dc
  }
}`,
  run: ({ system }, lookup) =>
    system.value === 'three-phase' && endsOf(lookup.block, lookup).some((end) => end?.kind === 'battery')
      ? [
          at(system, {
            message: 'The cable comes from a battery, which gives DC.',
            todo: 'Write `system: dc`, or name the device it really comes from.',
            found: system.value,
            limit: 'dc',
          }),
        ]
      : [],
})
