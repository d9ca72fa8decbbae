import { at, check, commonPractice } from '../../../checks/check.ts'
import { reaches } from '../../../engineering/compare.ts'

export default check({
  id: 'alignment/flange-smaller-than-shaft',
  severity: 'error',
  title: 'Coupling flange not larger than its shaft',
  why: 'The flange sits on the shaft and is bolted outside it, so it is larger. One of the two figures is wrong, and slopes, limits and moves depend on the flange.',
  source: commonPractice('common practice, no source'),
  on: 'coupling',
  plan: 'waits',
  needs: { flange: 'coupling.flange-diameter', diameter: 'shaft.diameter' },
  fires: `drive main {
  shaft { diameter: 120 mm }
  coupling {
    flange-diameter: 100 mm
#                    ^^^^^^ not larger than its shaft
  }
}`,
  quiet: `drive main {
  shaft { diameter: 35 mm }
  coupling {
    flange-diameter: 100 mm
  }
}`,
  run: ({ flange, diameter }, { show }) => {
    const shaft = diameter.value.low ?? diameter.value.nominal
    if (!reaches(shaft, flange.value)) return []
    return [
      at(flange, {
        message: `The flange, ${show(flange.value, 'length')}, is not larger than its shaft, ${show(diameter.value.nominal, 'length')}.`,
        todo: 'Measure both, and check their units.',
        found: show(flange.value, 'length'),
        limit: `above ${show(diameter.value.nominal, 'length')}`,
        related: [{ at: diameter.at, message: 'the diameter of the shaft' }],
      }),
    ]
  },
})
