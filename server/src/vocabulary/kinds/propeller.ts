import { block, fact } from '../block.ts'
import { amount, choice, count } from '../shape.ts'

export const propeller = block({
  kind: 'propeller',
  doc: 'The propeller.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    diameter: fact(amount('length', { min: 0.05, max: 10 }), 'Diameter.', {
      from: 'draft',
      example: '420 mm',
    }),
    pitch: fact(amount('length', { min: 0.01, max: 20 }), 'Pitch.', {
      from: 'for-review',
      example: '300 mm',
    }),
    blades: fact(count({ min: 2, max: 9 }), 'Number of blades.', { from: 'for-review', example: '3' }),
    mass: fact(amount('mass', { min: 0.01, max: 1e5 }), 'Mass.', { from: 'issued', example: '8.5 kg' }),
    turns: fact(
      choice(['right-hand', 'left-hand']),
      'Direction of rotation going ahead, seen from astern: right-hand is clockwise.',
      {
        from: 'for-review',
        example: 'right-hand',
        perDrive: true,
      },
    ),
  },
  example: `propeller {
  diameter: 420 mm
  pitch:    300 mm
  blades:   3
  turns:    right-hand
}`,
})
