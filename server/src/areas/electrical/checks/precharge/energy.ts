import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { prechargingOf } from '../../plans/precharging.ts'

export default check({
  id: 'precharge/energy',
  severity: 'error',
  title: 'Precharge resistor cannot bear the energy',
  why: 'Each precharge turns as much energy into heat in the resistor as the capacitance then holds, whatever the resistance is. A resistor that is rated for its power alone burns out in the pulse.',
  source: theJobFile('the energy that the maker of the resistor permits; ½CV² (definition)'),
  needs: { energy: 'precharge.energy' },
  on: 'precharge',
  fires: `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 15 mohm }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
  contactor main-contactor { current: 250 A  voltage: 150 V  makes: 500 A }
  precharge {
    around: main-contactor
    resistance: 47 ohm
    energy: 30 J
#           ^^^^ 39.7 J
    power: 25 W
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
  }
}`,
  run: ({ energy }, lookup) => {
    const work = prechargingOf(lookup.block, lookup)
    if (!work.ok || reaches(energy.value, work.value.energy)) return []
    const found = formatSi(work.value.energy, 'energy', 'metric', 3)
    const limit = formatSi(energy.value, 'energy')
    return [
      at(energy, {
        message: `One precharge heats the resistor by ${found}; it bears ${limit}.`,
        detail: `${lookup.show(work.value.capacitance, 'capacitance')} at ${formatSi(work.value.voltage, 'voltage')}.`,
        todo: 'Choose a resistor that is rated for a pulse of this energy. Another resistance does not help.',
        found,
        limit: `at most ${limit}`,
        assumptions: work.value.assumptions,
      }),
    ]
  },
})
