import { at, check, commonPractice } from '../../../checks/check.ts'
import { reaches } from '../../../engineering/compare.ts'

export default check({
  id: 'alignment/bearing-smaller-than-shaft',
  severity: 'error',
  title: 'Bearing smaller than the shaft',
  why: 'The bore of a bearing is larger than its shaft by the clearance. One of the two figures is wrong, or belongs to another shaft.',
  source: commonPractice('common practice, no source'),
  on: 'bearing',
  needs: { bore: 'bearing.bore', diameter: 'shaft.diameter' },
  fires: `drive main {
  shaft { diameter: 35 mm h9 }
  bearing stern {
    at: 0.21 m
    bore: 32.2 mm
#         ^^^^^^^ smaller than the shaft
  }
}`,
  quiet: `drive main {
  shaft { diameter: 35 mm h9 }
  bearing stern {
    at: 0.21 m
    bore: 35.2 mm
  }
}`,
  run: ({ bore, diameter }, { show }) => {
    const shaft = diameter.value.low ?? diameter.value.nominal
    if (reaches(bore.value, shaft)) return []
    return [
      at(bore, {
        message: `The bore, ${show(bore.value, 'length')}, is smaller than the shaft, ${show(shaft, 'length')} at least.`,
        todo: 'Measure both, and check their units. Ask the maker of the bearing for the clearance.',
        found: show(bore.value, 'length'),
        limit: `at least ${show(shaft, 'length')}`,
        related: [{ at: diameter.at, message: 'the diameter of the shaft' }],
      }),
    ]
  },
})
