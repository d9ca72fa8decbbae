import { block, fact } from '../block.ts'
import { amount, choice } from '../shape.ts'

export const bearing = block({
  kind: 'bearing',
  doc: 'A shaft bearing.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  facts: {
    at: fact(
      amount('length', { min: 0, max: 100 }),
      'Distance from the after end of the shaft forward to the middle of the bearing.',
      {
        from: 'draft',
        example: '0.21 m',
      },
    ),
    kind: fact(
      choice(['water-lubricated', 'oil-lubricated', 'grease-lubricated', 'rolling']),
      'Lubrication or type.',
      {
        from: 'for-review',
        example: 'water-lubricated',
      },
    ),
    length: fact(amount('length', { min: 0.005, max: 5 }), 'Length of the bearing surface.', {
      from: 'for-review',
      example: '140 mm',
    }),
    bore: fact(amount('length', { min: 0.005, max: 1 }), 'Bore.', {
      from: 'for-review',
      example: '35.20 mm',
    }),
  },
  example: `bearing stern {
  at:     0.21 m
  kind:   water-lubricated
  length: 140 mm
  bore:   35.20 mm
}`,
})
