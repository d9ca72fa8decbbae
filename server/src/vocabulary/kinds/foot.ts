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
    'travel-up': fact(amount('length', { min: 0, max: 1 }), 'How far it can still be raised.', {
      example: '6 mm',
    }),
    'travel-down': fact(amount('length', { min: 0, max: 1 }), 'How far it can still be lowered.', {
      example: '4 mm',
    }),
    'hole-clearance': fact(
      amount('length', { min: 0, max: 0.1 }),
      'How far it can still go to port, and as far to starboard, before its hole meets the stud.',
      { example: '1.5 mm' },
    ),
    pack: fact(amount('length', { min: 0, max: 1 }), 'Thickness of the shims below it now.', {
      example: '3.2 mm',
    }),
    growth: fact(
      amount('length', { min: -0.05, max: 0.05 }),
      'How far the machine rises at this foot from cold to working heat, against the shaft; sinking is negative. Read cold, the machine is to stand this much low here.',
      { example: '0.10 mm' },
    ),
  },
  example: 'foot aft-port { from-coupling: 180 mm  across: 140 mm port }',
})
