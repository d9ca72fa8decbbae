import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'

const knot = 1852 / 3600

export const point = block({
  kind: 'point',
  doc: 'A speed at which the boat is to run, and for how long between two charges.',
  heading: 'name',
  within: ['service'],
  many: true,
  facts: {
    'boat-speed': fact(amount('speed', { min: 0.1 * knot, max: 100 * knot }), 'Speed through the water.', {
      from: 'draft',
      example: '5.5 kn',
    }),
    time: fact(
      amount('time', { min: 1, max: 8.64e6 }),
      'How long it runs at this speed between two charges. The times of all points add up.',
      { from: 'for-review', example: '3 h' },
    ),
  },
  example: 'point cruise { boat-speed: 5.5 kn  time: 3 h }',
})
