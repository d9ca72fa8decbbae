import { at, check, published } from '../../../../checks/check.ts'
import { formatNumber, formatSi } from '../../../../quantity/format.ts'
import { formatCelsius } from '../../../common/celsius.ts'
import { unlessReplaced } from '../../history.ts'
import { sensorTestOf } from '../../plans/sensor-test.ts'

export default check({
  id: 'test/sensor-implausible',
  severity: 'error',
  title: 'Sensor that does not read the temperature it has',
  why: 'A sensor that reads wrong cold reads wrong hot. Compare it with a thermometer beside it, after the machine has stood for hours. Measure it with a small voltage, never with an insulation tester.',
  source: published(
    'IEC 60751, data sheet of KTY84-130, DIN 44081, R25 and B as stated; more than 5 K besides the tolerance: common practice, no source',
  ),
  on: 'test',
  needs: { resistance: 'test.resistance' },
  fires: `drive main {
  motor propulsion {
    sensor winding { kind: pt1000 }
  }
  test t1 {
    kind: sensor
    on: propulsion.winding
    taken: 2026-03-12
    resistance: 108 ohm
#               ^^^^^^^ The resistance is that of a pt100.
    temperature: 20 degC
  }
}`,
  quiet: `drive main {
  motor propulsion {
    sensor winding { kind: pt1000 }
  }
  test t1 {
    kind: sensor
    on: propulsion.winding
    taken: 2026-03-12
    resistance: 1078 ohm
    temperature: 20 degC
  }
}`,
  run: ({ resistance }, lookup) => {
    const test = sensorTestOf(lookup.block, lookup)
    if (test?.agrees !== false) return []
    const { read, stated, within, because } = test
    const ohms = formatSi(resistance.value, 'resistance')
    const found =
      read === undefined
        ? ohms
        : read.is === 'temperature'
          ? formatCelsius(read.celsius)
          : `${read.is === 'colder' ? 'below' : 'above'} ${formatCelsius(read.end)}`
    return unlessReplaced(lookup, [
      at(resistance, {
        message:
          read === undefined
            ? `The trip thermistor has ${ohms}${stated === undefined ? '' : ` at ${formatCelsius(stated)}`}.`
            : `The sensor reads ${found}${stated === undefined ? '' : `, but ${formatCelsius(stated)} was measured beside it`}.`,
        ...(because !== undefined && { detail: because }),
        todo: 'Check the kind, the wiring and the unit, then measure again.',
        found,
        ...(stated !== undefined && { limit: `${formatCelsius(stated)} ± ${formatNumber(within, 2)} K` }),
      }),
    ])
  },
})
