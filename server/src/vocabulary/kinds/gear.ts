import { block, fact } from '../block.ts'
import { amount, choice } from '../shape.ts'
import { gearRatio } from '../shapes/gear-ratio.ts'

const rpm = (2 * Math.PI) / 60

export const gear = block({
  kind: 'gear',
  doc: 'The gear between motor and shaft.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    ratio: fact(
      gearRatio,
      'Turns of the motor for one turn of the shaft. `2.5:1` and `1:2.5` both mean a reduction: 2.5 turns of the motor. For a gear that speeds the shaft up, write a number below 1: `0.4`.',
      {
        from: 'draft',
        example: '2.5',
      },
    ),
    turns: fact(choice(['same', 'opposite']), 'Whether the shaft turns the same way as the motor.', {
      from: 'for-review',
      example: 'opposite',
    }),
    'rated-torque': fact(
      amount('torque', { min: 0.1, max: 1e7 }),
      'Torque that it can take continuously, at its motor side.',
      { example: '120 N·m' },
    ),
    'peak-torque': fact(
      amount('torque', { min: 0.1, max: 1e7 }),
      'Torque that it can take for a short time, at its motor side.',
      { example: '180 N·m' },
    ),
    'max-speed': fact(
      amount('rotational speed', { min: rpm, max: 50_000 * rpm }),
      'Highest speed that the maker permits, at its motor side.',
      { example: '2600 rpm' },
    ),
    mass: fact(amount('mass', { min: 0.1, max: 1e5 }), 'Mass.', { example: '34 kg' }),
    efficiency: fact(amount('ratio', { min: 0.01, max: 1 }), 'Efficiency.', { example: '97 %' }),
  },
  example: `gear {
  ratio: 2.5
  turns: opposite
}`,
})
