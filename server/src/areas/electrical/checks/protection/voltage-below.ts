import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { onCharge } from '../../../common/string-facts.ts'
import { cableNamed } from '../../cable-named.ts'
import { highestOf } from '../../plans/cable-protection.ts'
import { circuitCableOf } from '../../plans/let-through.ts'

export default check({
  id: 'protection/voltage-below',
  severity: 'error',
  title: 'Fuse voltage rating too low',
  why: 'Above its rated voltage, a fuse or breaker does not put out the arc when it opens. The DC arc keeps burning.',
  source: published(
    '33 CFR 183.455(d): not less than the nominal voltage of the circuit; here the highest voltage of the battery, to be safe',
  ),
  on: 'protection',
  needs: { voltage: 'protection.voltage' },
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
  }
  protection main-fuse {
    rating: 315 A
    in: feed
    voltage: 80 V
#            ^^^^ reaches
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
  }
  protection main-fuse {
    rating: 315 A
    in: feed
    voltage: 125 V
  }
}`,
  run: ({ voltage }, lookup) => {
    const cable = circuitCableOf(lookup.block, lookup)
    const highest = cable && highestOf(cable, lookup.from(cable), onCharge)
    if (highest === undefined || reaches(voltage.value, highest)) return []
    const found = formatSi(voltage.value, 'voltage')
    const limit = formatSi(highest, 'voltage')
    return [
      at(voltage, {
        message: `The rated voltage is ${found}; the circuit reaches ${limit}.`,
        todo: 'Choose one rated for this voltage in DC.',
        found,
        limit: `at least ${limit}`,
        related: cableNamed(lookup),
      }),
    ]
  },
})
