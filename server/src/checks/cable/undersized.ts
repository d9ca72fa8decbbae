import { reaches } from '../../engineering/compare.ts'
import { saidLoading } from '../../plans/amperes.ts'
import { cableAmpacity } from '../../plans/cable-ampacity.ts'
import { ampacityWords } from '../../plans/cable-words.ts'
import { cableCurrent } from '../../plans/design-current.ts'
import { at, check, published } from '../check.ts'
import { largerConductor } from '../fix-cable.ts'

export default check({
  id: 'cable/undersized',
  severity: 'error',
  title: 'Cable too thin for its current',
  why: 'A cable that carries more than it can shed as heat ages, softens and burns. What it can carry falls with the warmth around it and with every conductor beside it.',
  source: published(
    '33 CFR 183.425 table 5 and notes; ISO 10133 / 13297 table A.1 (from memory), never above the former',
  ),
  on: 'cable',
  needs: { conductor: 'cable.conductor' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    conductor: 25 mm2
#              ^^^^^^ carries
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
    const load = cableCurrent(context.block, context)
    const carrying = cableAmpacity(context.block, context)
    if (!load.ok || !carrying.ok) return []
    const { current, currentFrom } = load.value
    const { carries } = carrying.value
    if (carries === undefined || reaches(carries, current)) return []
    const { current: found, carries: limit } = saidLoading(current, carries)
    return [
      at(conductor, {
        message: `The cable carries ${limit} and has to carry ${found} (${currentFrom}). ${ampacityWords(carrying.value)}`,
        todo: 'Take a larger conductor, more of them in parallel, or a better insulation. Its fuse goes with it. Live DC kills and burns: work for a licensed person.',
        found,
        limit: `at most ${limit}`,
        assumptions: [...load.value.assumptions, ...carrying.value.assumptions],
        data: { current, carries },
      }),
    ]
  },
  fixes: (_finding, ground) => largerConductor(ground),
})
