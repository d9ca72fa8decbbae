import { block, fact } from '../block.ts'
import { reference } from '../shape.ts'
import { side } from '../shapes/side.ts'

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
    across: fact(side, 'Side of the shaft line from the centreline of the boat, if there are several.', {
      example: '0.85 m port',
      perDrive: true,
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
