import { at, check, commonPractice, type Reported } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'

export default check({
  id: 'sensor/out-of-order',
  severity: 'error',
  title: 'Warning, reduction and trip in the wrong order',
  why: 'The warning comes first, so that somebody can act. Then the controller reduces the current, and only then it switches off. In another order the drive stops without a warning.',
  source: commonPractice('warning, then reduced current, then trip: common practice, no source'),
  on: 'sensor',
  wants: { warning: 'sensor.warning', derating: 'sensor.derating', trip: 'sensor.trip' },
  fires: `drive main {
  motor {
    sensor winding { kind: pt1000  warning: 150 degC  trip: 140 degC }
#                                           ^^^^^^^^ trip is at 140 degC
  }
}`,
  quiet: `drive main {
  motor {
    sensor winding { kind: pt1000  warning: 130 degC  trip: 150 degC }
  }
}`,
  run: ({ warning, derating, trip }, { show }) => {
    if (!trip) return []
    const limit = show(trip.value, 'temperature')
    const related = [{ at: trip.at, message: 'the trip' }]
    const found: Reported[] = []
    if (warning && reaches(warning.value, trip.value))
      found.push(
        at(warning, {
          message: `The warning is at ${show(warning.value, 'temperature')}, but the trip is at ${limit}.`,
          todo: 'Set the warning 10 to 15 K below the trip.',
          found: show(warning.value, 'temperature'),
          limit: `below ${limit}`,
          related,
        }),
      )
    // The last point before the share falls.
    const whole = derating?.value[0]?.value ?? 1
    const begins = derating?.value.findLast(({ value }) => value >= whole)
    if (derating && begins && reaches(begins.at, trip.value))
      found.push(
        at(derating, {
          message: `The current is reduced from ${show(begins.at, 'temperature')} on; the trip is at ${limit}.`,
          todo: 'Set the reduction to begin below the trip.',
          found: show(begins.at, 'temperature'),
          limit: `below ${limit}`,
          related,
        }),
      )
    return found
  },
})
