import { atHead, check, published } from '../../../../checks/check.ts'
import { addFuse } from '../../fixes.ts'
import { endsOf } from '../../plans/cable-circuit.ts'
import { isUnprotected } from '../../plans/cable-protection.ts'

export default check({
  id: 'protection/none',
  severity: 'error',
  title: 'Battery cable without a fuse or breaker',
  why: 'A battery cannot be switched off. It feeds a short circuit with all its current until something opens or burns.',
  source: published('33 CFR 183.455: overcurrent protection at the source of power'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed {
# ^^^^^^^^^^ No fuse
    from: house
    to: controller
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
  protection main-fuse {
    rating: 315 A
    in: feed
  }
}`,
  run: (_facts, lookup) => {
    const { block: cable } = lookup
    if (!isUnprotected(cable, lookup)) return []
    const [device] = endsOf(cable, lookup).filter((end) => end?.kind === 'protection')
    return [
      atHead(cable, {
        message: 'No fuse or breaker protects this cable from the battery.',
        ...(device && { detail: 'The one at its end protects what lies behind that.' }),
        todo: device
          ? 'Add a `protection` block where the cable begins, or write the cable `from` that one if it leads away from it.'
          : 'Add a `protection` block near the battery, with `in`.',
        data: { add: 'protection' },
      }),
    ]
  },
  fixes: (_finding, ground) => addFuse(ground),
})
