import { at, check, published } from '../../../checks/check.ts'
import { reaches } from '../../../engineering/compare.ts'

export default check({
  id: 'alignment/gauge-diameter-beyond-flange',
  severity: 'error',
  title: 'Gauge diameter larger than the flange',
  why: 'The gauge cannot go in outside the flange. One of the two figures is wrong, and every slope and move is calculated from it.',
  source: published('geometry'),
  on: 'coupling',
  plan: 'waits',
  needs: { gauge: 'coupling.gauge-diameter', flange: 'coupling.flange-diameter' },
  fires: `drive main {
  coupling {
    flange-diameter: 100 mm
    gauge-diameter: 110 mm
#                   ^^^^^^ larger than the flange
  }
}`,
  quiet: `drive main {
  coupling {
    flange-diameter: 110 mm
    gauge-diameter: 110 mm
  }
}`,
  run: ({ gauge, flange }, { show }) =>
    reaches(flange.value, gauge.value)
      ? []
      : [
          at(gauge, {
            message: `The gauge-diameter, ${show(gauge.value, 'length')}, is larger than the flange, ${show(flange.value, 'length')}.`,
            todo: 'Measure both. The gauge-diameter is where the feeler goes in, at most the flange.',
            found: show(gauge.value, 'length'),
            limit: `at most ${show(flange.value, 'length')}`,
            related: [{ at: flange.at, message: 'the flange-diameter' }],
          }),
        ],
})
