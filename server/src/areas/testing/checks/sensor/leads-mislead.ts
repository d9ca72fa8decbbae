import { at, check, published } from '../../../../checks/check.ts'
import { formatNumber, formatSi } from '../../../../quantity/format.ts'
import { kelvin } from '../../../common/celsius.ts'
import { leadErrorOf } from '../../plans/leads.ts'

/** Error that is looked over, K. Common practice, no source. */
const tolerated = 3

export default check({
  id: 'sensor/leads-mislead',
  severity: 'warning',
  title: 'Leads that change the reading of a sensor',
  why: 'With two wires the controller takes the resistance of the leads for heat. A Pt100 seems 2.6 K hotter for each ohm, a Pt1000 0.26 K. An NTC seems colder, so it trips too late.',
  source: published(
    'IEC 60751: 0.385 ohm for each kelvin of a Pt100; more than 3 K: common practice, no source',
  ),
  on: 'sensor',
  needs: { leads: 'sensor.lead-resistance' },
  fires: `drive main {
  motor {
    sensor winding { kind: pt100  trip: 150 degC  lead-resistance: 2 ohm }
#                                                                  ^^^^^ 5.4 K too hot
  }
}`,
  quiet: `drive main {
  motor {
    sensor winding { kind: pt1000  trip: 150 degC  lead-resistance: 2 ohm }
  }
}`,
  run: ({ leads }, { block, show }) => {
    const found = leadErrorOf(block)
    if (!found || Math.abs(found.error) <= tolerated) return []
    const size = `${formatNumber(Math.abs(found.error), 2)} K`
    return [
      at(leads, {
        message: `Leads of ${formatSi(leads.value, 'resistance')} make it read ${size} too ${found.error > 0 ? 'hot' : 'cold'}.`,
        detail: `At ${show(kelvin(found.celsius), 'temperature')}.`,
        todo: 'Connect it with three or four wires, correct it in the controller, or choose a sensor of more ohms.',
        found: size,
        limit: `at most ${tolerated} K`,
      }),
    ]
  },
})
