import { block, fact } from '../block.ts'
import { reference } from '../shape.ts'

export const drive = block({
  kind: 'drive',
  doc: 'One shaft line: propeller, shaft, seal, coupling, gear, motor, and what was read and done at them.',
  heading: 'name',
  within: ['top'],
  many: true,
  facts: {
    battery: fact(reference('battery'), 'The bank that feeds it, where the file has several.', {
      example: 'house',
    }),
  },
  example: `drive starboard {
  shaft { diameter: 35 mm }
}`,
})
