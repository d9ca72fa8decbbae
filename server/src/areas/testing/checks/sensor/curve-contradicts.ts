import { at, check, published } from '../../../../checks/check.ts'
import {
  sensorRange,
  sensorReading,
  sensorResistance,
} from '../../../../engineering/temperature/sensor-curve.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { celsius, kelvin } from '../../../common/celsius.ts'
import { lawOf, pointsOf } from '../../plans/sensor-curve.ts'

/** What two statements of one sensor may differ by, K: B of a thermistor varies by up to 3 % over its range. Common practice, no source. */
const tolerated = 8

export default check({
  id: 'sensor/curve-contradicts',
  severity: 'error',
  title: 'Curve of a sensor that its kind cannot have',
  why: 'The resistance of platinum, silicon and trip thermistors rises with temperature, that of an NTC falls. A curve that turns, or that is of another kind, gives wrong temperatures.',
  source: published('IEC 60751 for platinum; data sheet of KTY84-130; R25 and B as stated'),
  on: 'sensor',
  needs: { kind: 'sensor.kind', curve: 'sensor.curve' },
  fires: `drive main {
  motor {
    sensor winding { kind: pt1000  curve: 0 degC 100 ohm, 100 degC 138.5 ohm }
#                                         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ 1000 ohm
  }
}`,
  quiet: `drive main {
  motor {
    sensor winding { kind: pt1000  curve: 0 degC 1000 ohm, 100 degC 1385 ohm }
  }
}`,
  run: ({ kind, curve }, { block, show }) => {
    const points = curve.value
    const own = pointsOf(block)
    const range = own && sensorRange(own)
    const rises = (points.at(-1)?.value ?? 0) > (points[0]?.value ?? 0)
    if (!range)
      return [
        at(curve, {
          message: 'The resistances of the curve neither all rise nor all fall.',
          todo: 'Correct the points.',
        }),
      ]
    if (rises === (kind.value === 'ntc'))
      return [
        at(curve, {
          message: `The resistance of a ${kind.value} ${rises ? 'falls' : 'rises'} with temperature; that of the curve does not.`,
          todo: 'Correct the points, or the kind.',
        }),
      ]
    const law = lawOf(block)
    if (!law) return []
    for (const point of points) {
      const t = celsius(point.at)
      const read = sensorReading(law, point.value)
      const off = read?.is === 'temperature' ? Math.abs(read.celsius - t) : undefined
      const ohms = sensorResistance(law, t)
      // Beyond what the kind is known for nothing can be compared.
      if (ohms === undefined || (off !== undefined && off <= tolerated)) continue
      return [
        at(curve, {
          message: `The curve has ${formatSi(point.value, 'resistance')} at ${show(kelvin(t), 'temperature')}; a ${kind.value} has ${formatSi(ohms, 'resistance')} there.`,
          detail: 'The curve counts.',
          todo: 'Correct the points, or what else is stated of the sensor.',
          found: formatSi(point.value, 'resistance'),
          limit: formatSi(ohms, 'resistance'),
        }),
      ]
    }
    return []
  },
})
