import { at, check } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { cableNamed } from '../../cable-named.ts'
import { formatNotCounted, shortCircuit, shortCircuitSource } from '../../short-circuit.ts'

export default check({
  id: 'protection/interrupts-too-little',
  severity: 'error',
  title: 'Fuse that cannot interrupt a short circuit',
  why: 'A fuse or breaker may burst or keep burning when the current is more than it can interrupt. A limit in the battery management is not relied on. Cables count as cold.',
  source: shortCircuitSource,
  on: 'protection',
  needs: { interrupts: 'protection.interrupts' },
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
    rating: 315 A
    in: feed
    interrupts: 5 kA
#               ^^^^ short circuit
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V  short-circuit-current: 8 kA  internal-resistance: 14 mohm }
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
    interrupts: 20 kA
  }
}`,
  run: ({ interrupts }, lookup) => {
    const fault = shortCircuit(lookup)
    if (!fault || reaches(interrupts.value, fault.highest)) return []
    const found = formatCarried(interrupts.value)
    const limit = formatLoad(fault.highest)
    return [
      at(interrupts, {
        message: `It can interrupt ${found}; a short circuit at its place reaches ${limit}.`,
        detail: `Short-circuit current: ${fault.from.join('; ')}. Cables count as cold, and as none where their length is not known.${formatNotCounted(fault)}`,
        todo: 'Choose one that can interrupt more, in DC at the voltage of this circuit.',
        found,
        limit: `at least ${limit}`,
        related: cableNamed(lookup),
      }),
    ]
  },
})
