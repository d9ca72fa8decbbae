import { block, fact } from '../block.ts'
import { amount, designation, sized } from '../shape.ts'

export const shaft = block({
  kind: 'shaft',
  doc: 'The propeller shaft.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    diameter: fact(sized('length', { min: 0.005, max: 0.6 }), 'Diameter, with a tolerance if it has one.', {
      from: 'draft',
      example: '35 mm h9',
    }),
    length: fact(amount('length', { min: 0.05, max: 100 }), 'Overall length.', {
      from: 'for-review',
      example: '2.65 m',
    }),
    material: fact(designation, 'Material.', { from: 'for-review', example: 'duplex-1-4462' }),
  },
  example: `shaft {
  diameter: 35 mm h9
  length:   2.65 m [drawing "S-07-31"]
  material: duplex-1-4462
}`,
})
