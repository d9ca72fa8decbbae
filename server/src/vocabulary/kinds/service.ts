import { block, fact } from '../block.ts'
import { amount, choice } from '../shape.ts'
import { lowerLimit } from '../shapes/lower-limit.ts'

export const service = block({
  kind: 'service',
  doc: 'What the boat is to do between two charges: how fast, how long, how far, and in which water.',
  heading: 'none',
  within: ['top'],
  many: false,
  facts: {
    water: fact(choice(['sea', 'brackish', 'fresh']), 'The water it runs in.', {
      from: 'for-review',
      example: 'sea',
    }),
    'water-temperature': fact(
      amount('temperature', { min: 271, max: 313.15 }),
      'Temperature of the water. If not stated, 15 degC.',
      { example: '12 degC' },
    ),
    'sea-margin': fact(
      amount('ratio', { min: 0, max: 2 }),
      'What wind, waves and growth add to the resistance in calm water. If not stated, nothing is added.',
      { example: '15 %' },
    ),
    reserve: fact(
      amount('ratio', { min: 0, max: 0.95 }),
      'Share of the usable energy that must be left at the end.',
      { from: 'for-review', example: '20 %' },
    ),
    range: fact(
      lowerLimit('length', { min: 1, max: 1e8 }),
      'How far it must go on one charge, the reserve left: at the speed of the point that takes the longest time.',
      { example: 'min 20 nmi' },
    ),
  },
  needs: { draft: ['point'] },
  example: `service {
  water:             sea
  water-temperature: 12 degC
  reserve:           20 %
  sea-margin:        15 %
  range:             min 20 nmi
  point cruise { boat-speed: 5.5 kn  time: 3 h }
}`,
})
