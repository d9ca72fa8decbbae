import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { dangerousFrom } from '../../../common/dangers.ts'
import { chargeOf } from '../../plans/controller-charge.ts'
import { isPrecharged } from '../../plans/precharge-circuit.ts'

export default check({
  id: 'precharge/none',
  severity: 'warning',
  title: 'Capacitance without a precharge',
  why: 'An empty capacitance is a short circuit when its switch closes: thousands of amperes weld the contacts, open the fuse, or destroy the capacitors. A precharge fills it through a resistor first. Some controllers do that themselves.',
  source: commonPractice('a precharge before a capacitance of more than 0.2 J: common practice, no source'),
  on: 'controller',
  fires: `job "Launch" { vessel: "Launch 07" }
battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
# ^^^^^^^^^^ Nothing charges
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
}`,
  quiet: `job "Launch" { vessel: "Launch 07" }
battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
  }
}`,
  run: (_facts, lookup) => {
    const { block } = lookup
    if (lookup.isTaken || block.likeUnknown) return []
    const charge = chargeOf(block, lookup)
    // Nothing is said before the capacitance is: the job asks for that.
    if (!charge.ok || charge.value.energy < dangerousFrom('stored-charge')) return []
    if (isPrecharged(block, lookup) !== false) return []
    const found = lookup.show(charge.value.capacitance, 'capacitance')
    return [
      atHead(block, {
        message: `Nothing charges the ${found} of the controller before its switch closes.`,
        todo: 'Add a `precharge` around the contactor. Or state `built-in-precharge: yes`, if its maker says so.',
        found,
      }),
    ]
  },
})
