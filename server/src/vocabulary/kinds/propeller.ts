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
      example: '420 mm',
      required: true,
    }),
    pitch: fact(amount('length', { min: 0.01, max: 20 }), 'Pitch.', { example: '300 mm' }),
    blades: fact(count({ min: 2, max: 9 }), 'Number of blades.', { example: '3' }),
    mass: fact(amount('mass', { min: 0.01, max: 1e5 }), 'Mass.', { example: '8.5 kg' }),
    turns: fact(
      choice(['right-hand', 'left-hand']),
      'The way it turns going ahead, seen from astern: right-hand is clockwise.',
      {
        example: 'right-hand',
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
