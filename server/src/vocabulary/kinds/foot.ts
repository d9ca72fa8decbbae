import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'
import { side } from '../shapes/side.ts'

export const foot = block({
  kind: 'foot',
  doc: 'A foot of the machine. Here the machine is raised, lowered and moved sideways.',
  heading: 'name',
  within: ['bed'],
  many: true,
  facts: {
    'from-coupling': fact(
      amount('length', { min: -20, max: 20 }),
      'Distance forward of the coupling faces.',
      {
        from: 'draft',
        onBoat: true,
        example: '180 mm',
      },
    ),
    across: fact(side, 'Distance from the shaft line, to port or to starboard.', {
      from: 'draft',
      onBoat: true,
      example: '140 mm port',
    }),
    'travel-up': fact(amount('length', { min: 0, max: 1 }), 'How far it can still be raised.', {
      example: '6 mm',
      perDrive: true,
    }),
    'travel-down': fact(amount('length', { min: 0, max: 1 }), 'How far it can still be lowered.', {
      example: '4 mm',
      perDrive: true,
    }),
    'hole-clearance': fact(
      amount('length', { min: 0, max: 0.1 }),
      'How far it can still go to each side before its hole meets the stud.',
      { example: '1.5 mm', perDrive: true },
    ),
    pack: fact(amount('length', { min: 0, max: 1 }), 'Thickness of the shims below it now.', {
      example: '3.2 mm',
      perDrive: true,
    }),
    growth: fact(
      amount('length', { min: -0.05, max: 0.05 }),
      'How far this foot rises from cold to working temperature, relative to the shaft. Negative means it sinks. For a cold reading, the machine must stand lower here by this amount.',
      { example: '0.10 mm' },
    ),
  },
  example: 'foot aft-port { from-coupling: 180 mm  across: 140 mm port }',
})
