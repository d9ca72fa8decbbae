import { reaches } from '../../engineering/compare.ts'
import { highestOf } from '../../plans/cable-protection.ts'
import { formatSi } from '../../quantity/format.ts'
import { at, check, published } from '../check.ts'

export default check({
  id: 'protection/voltage-below',
  severity: 'error',
  title: 'Fuse for a lower voltage',
  why: 'A fuse or breaker above its voltage does not put out the arc when it opens: DC burns on through it.',
  source: published(
    '33 CFR 183.455(d): not less than the nominal voltage of the circuit; held here to the highest of the battery, the safer',
  ),
  on: 'protection',
  needs: { voltage: 'protection.voltage', protects: 'protection.protects' },
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
    protects: feed
    voltage: 80 V
#            ^^^^ below
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
    protects: feed
    voltage: 125 V
  }
}`,
  run: ({ voltage, protects }, context) => {
    const cable = context.referred('protects')
    const highest = cable && highestOf(cable, context.from(cable))
    if (highest === undefined || reaches(voltage.value, highest)) return []
    const found = formatSi(voltage.value, 'voltage')
    const limit = formatSi(highest, 'voltage')
    return [
      at(voltage, {
        message: `The rated voltage, ${found}, is below the highest of its circuit, ${limit}.`,
        todo: 'Take one that is rated for this voltage in DC. The battery stays live: work for a licensed person.',
        found,
        limit: `at least ${limit}`,
        related: [{ at: protects.at, message: 'the cable it protects' }],
      }),
    ]
  },
})
