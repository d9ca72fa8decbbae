import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { averagePower } from '../../../../engineering/electrical/precharge.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { prechargingOf } from '../../plans/precharging.ts'

export default check({
  id: 'precharge/power',
  severity: 'error',
  title: 'Precharge resistor overheats when it is used often',
  why: 'The heat of one precharge must leave the resistor before the next. Its mean power is the energy of a pulse over the shortest interval between two.',
  source: published('mean power = energy / interval: a resistor maker’s guide'),
  needs: { power: 'precharge.power', interval: 'precharge.interval' },
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
#          ^^^ 3.97 W
    interval: 10 s
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
    power: 25 W
    interval: 10 s
  }
}`,
  run: ({ power, interval }, lookup) => {
    const work = prechargingOf(lookup.block, lookup)
    if (!work.ok) return []
    const mean = averagePower({ energy: work.value.energy, interval: interval.value })
    if (reaches(power.value, mean)) return []
    const found = formatSi(mean, 'power', 'metric', 3)
    const limit = formatSi(power.value, 'power')
    return [
      at(power, {
        message: `The resistor takes ${found} on average; it is rated for ${limit}.`,
        detail: `${formatSi(work.value.energy, 'energy', 'metric', 3)} every ${formatSi(interval.value, 'time')}.`,
        todo: 'Choose a resistor of more power, or a longer interval, and set the controller to it.',
        found,
        limit: `at most ${limit}`,
        assumptions: work.value.assumptions,
        related: [{ at: interval.at, message: 'the shortest interval' }],
      }),
    ]
  },
})
