import { at, check, theLanguage } from '../../../../checks/check.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'

export default check({
  id: 'sensor/derating-rises',
  severity: 'error',
  title: 'More current permitted at a higher temperature',
  why: 'A curve that rises heats a hot winding more. Usually the shares are in the wrong order.',
  source: theLanguage,
  on: 'sensor',
  needs: { derating: 'sensor.derating' },
  fires: `drive main {
  motor {
    sensor winding { kind: pt1000  derating: 130 degC 0 %, 150 degC 100 % }
#                                            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ rises
  }
}`,
  quiet: `drive main {
  motor {
    sensor winding { kind: pt1000  derating: 130 degC 100 %, 150 degC 0 % }
  }
}`,
  run: ({ derating }, { show }) => {
    const points = derating.value
    const i = points.findIndex(({ value }, j) => value > (points[j - 1]?.value ?? 1))
    const [from, to] = [points[i - 1], points[i]]
    if (!from || !to) return []
    return [
      at(derating, {
        message: `The permitted current rises from ${formatShare(from.value)} to ${formatShare(to.value)} at ${show(to.at, 'temperature')}.`,
        todo: 'Correct the shares: they fall, or stay the same, as the temperature rises.',
        found: formatShare(to.value),
        limit: `at most ${formatShare(from.value)}`,
      }),
    ]
  },
})
