import { at, check, theLanguage } from '../../../../checks/check.ts'
import type { Value } from '../../../../job/model.ts'

const platinum = ['pt100', 'pt1000']
/** All that read a temperature. A trip thermistor only switches. */
const reading = [...platinum, 'ntc', 'kty84-130']

export default check({
  id: 'sensor/fact-of-another-kind',
  severity: 'warning',
  title: 'Fact that a sensor of this kind does not have',
  why: 'The fact changes nothing here. Either it is of another sensor, or the kind is wrong. A trip thermistor reads no temperature, so it can neither warn nor reduce the current.',
  source: theLanguage,
  on: 'sensor',
  needs: { kind: 'sensor.kind' },
  wants: {
    tolerance: 'sensor.tolerance-class',
    r25: 'sensor.r25',
    beta: 'sensor.beta',
    switchesAt: 'sensor.switches-at',
    warning: 'sensor.warning',
    derating: 'sensor.derating',
  },
  fires: `drive main {
  motor {
    sensor winding { kind: pt1000  beta: 3380 K }
#                                        ^^^^^^ pt1000 has no beta
  }
}`,
  quiet: `drive main {
  motor {
    sensor winding { kind: ntc  r25: 10 kohm  beta: 3380 K }
  }
}`,
  run: ({ kind, tolerance, r25, beta, switchesAt, warning, derating }) => {
    const rows: readonly (readonly [Value<unknown> | undefined, readonly string[]])[] = [
      [tolerance, platinum],
      [r25, ['ntc']],
      [beta, ['ntc']],
      [switchesAt, ['ptc']],
      [warning, reading],
      [derating, reading],
    ]
    return rows.flatMap(([value, kinds]) =>
      value && !kinds.includes(kind.value)
        ? [
            at(value, {
              message: `A ${kind.value} has no ${value.name}.`,
              todo: 'Delete the fact, or correct the kind.',
              related: [{ at: kind.at, message: 'the kind of the sensor' }],
            }),
          ]
        : [],
    )
  },
})
