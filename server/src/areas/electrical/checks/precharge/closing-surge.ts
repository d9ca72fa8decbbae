import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatLoad } from '../../../common/amperes.ts'
import { makesOf } from '../../plans/precharge-circuit.ts'
import { prechargingOf } from '../../plans/precharging.ts'

export default check({
  id: 'precharge/closing-surge',
  severity: 'warning',
  title: 'Contactor may not bear the surge when it closes',
  why: 'When the contactor closes, what the precharge left drives a current through the battery, the cables and the capacitance. Beyond what the contactor can close on, its contacts weld, and it does not open again.',
  source: published('Ohm’s law: an upper bound, for cables and inductance are not counted'),
  needs: { resistance: 'precharge.resistance' },
  on: 'precharge',
  fires: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
#               ^^^^^^ 720 A
    closes-at: 90 %
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
    closes-at: 95 %
  }
}`,
  run: ({ resistance }, lookup) => {
    const makes = makesOf(lookup.block, lookup)
    const work = prechargingOf(lookup.block, lookup)
    if (makes === undefined || !work.ok) return []
    const { surge, difference, assumptions } = work.value
    if (surge === undefined || difference === undefined || reaches(makes, surge)) return []
    const [found, limit] = [formatLoad(surge), formatSi(makes, 'current')]
    return [
      at(resistance, {
        message: `Up to ${found} flow when the contactor closes; it can close on ${limit}.`,
        detail: `${formatSi(difference, 'voltage', 'metric', 3)} over the resistance of the batteries; cables and inductance make it less.`,
        todo: 'Close it later, at a voltage nearer to that of the battery. Or choose a contactor that makes this current.',
        found,
        limit: `at most ${limit}`,
        assumptions,
      }),
    ]
  },
})
