import { at, check, published } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { prechargingOf } from '../../plans/precharging.ts'

export default check({
  id: 'precharge/repeat-rate',
  severity: 'information',
  title: 'How often the precharge may work is not stated',
  why: 'A drive that is switched on again and again heats its precharge resistor each time. Without an interval nothing shows that it cools down between.',
  source: published('mean power = energy / interval: a resistor maker’s guide'),
  needs: { power: 'precharge.power' },
  on: 'precharge',
  fires: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
    energy: 120 J
    power: 2 W
#          ^^^ every 19.8 s
  }
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
    energy: 120 J
    power: 2 W
    interval: 60 s
  }
}`,
  run: ({ power }, lookup) => {
    const { block } = lookup
    if (factOf(block, 'precharge.interval') || block.unread.has('interval')) return []
    const work = prechargingOf(block, lookup)
    if (!work.ok) return []
    const found = formatSi(work.value.energy / power.value, 'time', 'metric', 3)
    return [
      at(power, {
        message: `The resistor bears one precharge every ${found}; the job does not state an interval.`,
        detail: `${formatSi(work.value.energy, 'energy', 'metric', 3)} over its continuous power.`,
        todo: 'State the shortest `interval` between two, as the controller is set.',
        found,
        assumptions: work.value.assumptions,
      }),
    ]
  },
})
