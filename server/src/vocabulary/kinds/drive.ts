import { block, fact } from '../block.ts'
import { reference } from '../shape.ts'

export const drive = block({
  kind: 'drive',
  doc: 'One shaft line: propeller, shaft, seal, coupling, gear and motor, with its readings and moves.',
  heading: 'name',
  within: ['top'],
  many: true,
  facts: {
    battery: fact(reference('battery'), 'The bank that feeds it, if the file has several.', {
      example: 'house',
    }),
  },
  needs: {
    'for-review': [
      'propeller',
      'shaft',
      'bearing',
      'shaft-log',
      'seal',
      'coupling',
      'motor',
      'bed',
      'controller',
      'cable',
      'protection',
    ],
    issued: ['phase-map'],
  },
  example: `drive starboard {
  shaft { diameter: 35 mm }
}`,
})
