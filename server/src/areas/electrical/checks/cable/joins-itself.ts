import { at, check, theLanguage } from '../../../../checks/check.ts'
import { elide } from '../../../../quantity/elide.ts'
import { endsOf } from '../../plans/cable-circuit.ts'

export default check({
  id: 'cable/joins-itself',
  severity: 'error',
  title: 'Cable with both ends at the same device',
  why: 'A cable from a device to itself carries nothing, or short-circuits it. One of the ends is a typing error. What depends on the cable is not checked.',
  source: theLanguage,
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: house
#       ^^^^^ Both ends
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
  run: ({ from, to }, lookup) => {
    const [first, second] = endsOf(lookup.block, lookup)
    if (!first || first !== second) return []
    return [
      at(to, {
        message: `Both ends of the cable are at ${elide(to.value)}.`,
        todo: 'Name the device at the other end.',
        found: to.value,
        related: [{ at: from.at, message: 'the other end' }],
      }),
    ]
  },
})
