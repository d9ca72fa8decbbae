import { block, fact } from '../block.ts'
import { amount, choice } from '../shape.ts'

export const bearing = block({
  kind: 'bearing',
  doc: 'A bearing of the shaft.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  facts: {
    at: fact(
      amount('length', { min: 0, max: 100 }),
      'Its middle, forward along the shaft from the after end of the shaft.',
      {
        example: '0.21 m',
      },
    ),
    kind: fact(
      choice(['water-lubricated', 'oil-lubricated', 'grease-lubricated', 'rolling']),
      'How it runs.',
      {
        example: 'water-lubricated',
      },
    ),
    length: fact(amount('length', { min: 0.005, max: 5 }), 'Length of the bearing surface.', {
      example: '140 mm',
    }),
    bore: fact(amount('length', { min: 0.005, max: 1 }), 'Bore.', { example: '35.20 mm' }),
  },
  example: `bearing stern {
  at:     0.21 m
  kind:   water-lubricated
  length: 140 mm
  bore:   35.20 mm
}`,
})
