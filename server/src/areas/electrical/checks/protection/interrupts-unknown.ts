import { atHead, check } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { formatLoad } from '../../../common/amperes.ts'
import { formatNotCounted, shortCircuit, shortCircuitSource } from '../../short-circuit.ts'

export default check({
  id: 'protection/interrupts-unknown',
  severity: 'information',
  title: 'Interrupting capacity not stated',
  why: 'A fuse or breaker may burst or keep burning when the current is more than it can interrupt. The job says what a short circuit of the battery reaches, but not what the fuse can interrupt.',
  source: shortCircuitSource,
  on: 'protection',
  fires: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
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
# ^^^^^^^^^^^^^^^^^^^^ can interrupt
    rating: 315 A
    in: feed
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
  }
}`,
  run: (_facts, lookup) => {
    const { facts, unread } = lookup.block
    if (facts.has('interrupts') || unread.has('interrupts')) return []
    const fault = shortCircuit(lookup)
    if (!fault) return []
    const limit = formatLoad(fault.highest)
    const isClassT = factOf(lookup.block, 'protection.fuse-class')?.value === 'T'
    return [
      atHead(lookup.block, {
        message: `What it can interrupt is not stated; a short circuit of the battery reaches ${limit}.`,
        detail: `Short-circuit current: ${fault.from.join('; ')}.${formatNotCounted(fault)}${isClassT ? ' Class T is usually made for 20 kA in DC (common practice, no source): only its maker knows.' : ''}`,
        todo: 'Add `interrupts`: the DC current it can interrupt at this voltage, from its maker.',
        limit: `at least ${limit}`,
      }),
    ]
  },
})
