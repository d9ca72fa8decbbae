import { fact } from '../block.ts'
import { amount } from '../shape.ts'
import { stud } from '../shapes/studs.ts'

/** Facts of the terminals of each part that a power cable ends at. */
export const terminalFacts = {
  stud: fact(stud, 'Thread of its power terminals.', { from: 'issued', example: 'M10' }),
  torque: fact(
    amount('torque', { min: 0.1, max: 1000 }),
    'Tightening torque of its power terminals, as its maker states it.',
    { from: 'issued', example: '18 N·m' },
  ),
  'terminal-temperature': fact(
    amount('temperature', { min: 313.15, max: 573.15 }),
    'Highest temperature that its terminals are rated for. A cable may be warmer only away from them.',
    { example: '90 degC' },
  ),
} as const
