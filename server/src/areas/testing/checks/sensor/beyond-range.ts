import { at, check, published } from '../../../../checks/check.ts'
import { sensorRange } from '../../../../engineering/temperature/sensor-curve.ts'
import { formatBand } from '../../../../quantity/format.ts'
import { celsius, kelvin } from '../../../common/celsius.ts'
import { curveOf } from '../../plans/sensor-curve.ts'
import { thresholdsOf } from '../../plans/thresholds.ts'

export default check({
  id: 'sensor/beyond-range',
  severity: 'error',
  title: 'Warning or trip where the sensor is not known',
  why: 'Beyond the ends of its curve nobody knows what resistance a sensor has. So a threshold there cannot be set or proved.',
  source: published(
    'IEC 60751: -200 to 850 °C; data sheet of KTY84-130: -40 to 300 °C; NTC by one B: -55 to 200 °C (common practice); else the stated points',
  ),
  on: 'sensor',
  fires: `drive main {
  motor {
    sensor winding { kind: ntc  curve: 25 degC 10 kohm, 100 degC 1.02 kohm  trip: 150 degC }
#                                                                                 ^^^^^^^^ known from 25 degC to 100 degC
  }
}`,
  quiet: `drive main {
  motor {
    sensor winding { kind: ntc  curve: 25 degC 10 kohm, 150 degC 370 ohm  trip: 150 degC }
  }
}`,
  run: (_facts, { block, show }) => {
    const curve = curveOf(block)
    const range = curve && sensorRange(curve)
    if (!range) return []
    return thresholdsOf(block)
      .filter(({ value }) => celsius(value.value) < range.low || celsius(value.value) > range.high)
      .map(({ words, value }) => {
        const known = formatBand({ low: kelvin(range.low), high: kelvin(range.high) }, 'temperature')
        return at(value, {
          message: `The ${words} is at ${show(value.value, 'temperature')}; the sensor is known from ${known}.`,
          todo: 'State more points of its curve, or choose another threshold.',
          found: show(value.value, 'temperature'),
          limit: known,
        })
      })
  },
})
