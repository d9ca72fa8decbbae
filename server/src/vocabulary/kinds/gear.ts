import { block, fact } from '../block.ts'
import { amount, choice } from '../shape.ts'

export const gear = block({
  kind: 'gear',
  doc: 'The gear between motor and shaft.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    ratio: fact(amount('ratio', { min: 0.01, max: 100 }), 'Turns of the motor for one turn of the shaft.', {
      example: '2.5',
      required: true,
    }),
    turns: fact(choice(['same', 'opposite']), 'Whether the shaft turns the same way as the motor.', {
      example: 'opposite',
    }),
    efficiency: fact(amount('ratio', { min: 0.01, max: 1 }), 'Efficiency.', { example: '97 %' }),
  },
  example: `gear {
  ratio: 2.5
  turns: opposite
}`,
})
