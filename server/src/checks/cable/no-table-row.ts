import { cableAmpacity } from '../../plans/cable-ampacity.ts'
import { at, check, published } from '../check.ts'

export default check({
  id: 'cable/no-table-row',
  severity: 'information',
  title: 'Conductor beyond the tables',
  why: 'Where no table has the size, what the cable carries is not guessed.',
  source: published('33 CFR 183.425 table 5; ISO 10133 / 13297 table A.1 (from memory)'),
  on: 'cable',
  needs: { conductor: 'cable.conductor' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 240 mm2
#              ^^^^^^^ no table
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
  run: ({ conductor }, context) => {
    const outcome = cableAmpacity(context.block, context)
    if (!outcome.ok || outcome.value.carries !== undefined) return []
    return [
      at(conductor, {
        message:
          'There is no table here for a conductor of this size: whether it carries its current is not shown.',
        todo: 'Use the figure of the cable maker, or conductors of a size the tables have, in parallel if one is not enough.',
        assumptions: outcome.value.assumptions,
      }),
    ]
  },
})
