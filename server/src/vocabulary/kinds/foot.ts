import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'
import { side } from '../shapes/side.ts'

export const foot = block({
  kind: 'foot',
  doc: 'A foot of the machine, where it can be raised, lowered and moved sideways.',
  heading: 'name',
  within: ['bed'],
  many: true,
  facts: {
    'from-coupling': fact(
      amount('length', { min: -20, max: 20 }),
      'Distance forward of the coupling faces.',
      {
        example: '180 mm',
        required: true,
      },
    ),
    across: fact(side, 'Distance from the shaft line, to port or to starboard.', {
      example: '140 mm port',
      required: true,
    }),
  },
  example: 'foot aft-port { from-coupling: 180 mm  across: 140 mm port }',
})
