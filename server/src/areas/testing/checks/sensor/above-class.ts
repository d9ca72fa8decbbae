import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { windingLimit } from '../../plans/motor-of.ts'
import { thresholdsOf } from '../../plans/thresholds.ts'

export default check({
  id: 'sensor/above-class',
  severity: 'error',
  title: 'Warning or trip above the thermal class',
  why: 'Above the temperature of its class, insulation loses half of its life for each 10 K. The hottest spot of a winding is hotter than its sensor, so the trip is set to the class or below, and the warning 10 to 15 K lower (common practice).',
  source: published(
    'IEC 60085: thermal classes A 105, E 120, B 130, F 155, H 180; N 200 and R 220 from memory',
  ),
  on: 'sensor',
  fires: `drive main {
  motor {
    thermal-class: B
    sensor winding { kind: pt1000  warning: 120 degC  trip: 150 degC }
#                                                           ^^^^^^^^ 130 degC
  }
}`,
  quiet: `drive main {
  motor {
    thermal-class: F
    sensor winding { kind: pt1000  warning: 130 degC  trip: 150 degC }
  }
}`,
  run: (_facts, { block, show }) => {
    const limit = windingLimit(block)
    if (!limit) return []
    const { thermalClass, most } = limit
    return thresholdsOf(block)
      .filter(({ value }) => !reaches(most, value.value))
      .map(({ words, value }) => {
        const found = show(value.value, 'temperature')
        const allowed = show(most, 'temperature')
        return at(value, {
          message: `The ${words} is at ${found}; class ${thermalClass.value} stands ${allowed}.`,
          todo: `Set it to ${allowed} or below, or choose a motor of a higher class.`,
          found,
          limit: `at most ${allowed}`,
          related: [{ at: thermalClass.at, message: 'the thermal class of the winding' }],
        })
      })
  },
})
