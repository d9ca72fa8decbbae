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
    'blade-area-ratio': fact(
      amount('ratio', { min: 0.05, max: 1.5 }),
      'Expanded area of all blades as a share of the area of the disc (EAR, often given as DAR).',
      { example: '55 %' },
    ),
    depth: fact(
      amount('length', { min: 0, max: 20 }),
      'How deep the middle of the propeller is below the water. It decides how soon the propeller cavitates.',
      { example: '0.45 m' },
    ),
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
