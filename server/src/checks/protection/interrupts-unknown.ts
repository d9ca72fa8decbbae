import { saidLoad } from '../../plans/amperes.ts'
import { atHead, check } from '../check.ts'
import { shortCircuit, shortCircuitSource } from '../short-circuit.ts'

export default check({
  id: 'protection/interrupts-unknown',
  severity: 'information',
  title: 'Fuse that does not say what it can interrupt',
  why: 'A fuse or breaker that opens on more than it can interrupt may burst or go on burning. The job tells what the battery can drive through a short circuit, but not whether the fuse bears it.',
  source: shortCircuitSource,
  on: 'protection',
  needs: { protects: 'protection.protects' },
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
    protects: feed
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
  }
}`,
  run: (_facts, context) => {
    const { facts, unread } = context.block
    if (facts.has('interrupts') || unread.has('interrupts')) return []
    const fault = shortCircuit(context)
    if (!fault) return []
    const limit = saidLoad(fault.current)
    return [
      atHead(context.block, {
        message: `What it can interrupt is not said, and the battery can drive ${limit} through a short circuit: ${fault.from.join('; ')}.`,
        todo: 'Write as interrupts the DC current that its maker says it can interrupt at the voltage of this circuit.',
        limit: `at least ${limit}`,
      }),
    ]
  },
})
