import { published } from '../../../checks/check.ts'
import { sensorResistance } from '../../../engineering/temperature/sensor-curve.ts'
import { formatSi } from '../../../quantity/format.ts'
import { celsius, formatCelsius } from '../../common/celsius.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { leadErrorOf } from '../plans/leads.ts'
import { curveOf } from '../plans/sensor-curve.ts'
import { thresholdsOf } from '../plans/thresholds.ts'

const types = published(
  'IEC 60751 for platinum; data sheet of KTY84-130; R25·exp(B·(1/T - 1/298.15)) for NTC, notes of two makers',
)

const resistance = figureWhereKnown({
  id: 'sensor/resistance',
  on: 'sensor',
  title: 'Resistance',
  kind: 'resistance',
  unit: 'ohm',
  doc: 'The resistance of the sensor at its warning and at its trip. With it, a decade box in its place proves both.',
  formula: 'by the curve of its kind, or by its points.',
  source: types,
  keys: ['at'],
  from: (sensor) => curveOf(sensor),
  of: (curve, { block, show }) =>
    thresholdsOf(block).flatMap(({ words, value }) => {
      const ohms = sensorResistance(curve, celsius(value.value))
      return ohms === undefined
        ? []
        : [
            {
              value: ohms,
              from: `${formatSi(ohms, 'resistance', 'metric', 5)} at ${show(value.value, 'temperature')}`,
              key: { at: words },
            },
          ]
    }),
})

const leads = figureWhereKnown({
  id: 'sensor/lead-error',
  on: 'sensor',
  title: 'Error of its leads',
  kind: 'temperature',
  unit: 'K',
  doc: 'How much too hot (+) or too cold (-) the sensor is read because of its leads, at its trip, or at 100 °C where no trip is stated. With two wires only.',
  formula: 'reading of resistance plus leads, minus the temperature.',
  source: types,
  from: leadErrorOf,
  of: ({ error, celsius: at }) => ({ value: error, from: `at ${formatCelsius(at)}` }),
})

export const sensorFigures = [resistance, leads]
