import { fact } from '../block.ts'
import { amount } from '../shape.ts'

const zero = 273.15

/** Fact of a part that can carry less where it is warm. */
export const ambient = fact(
  amount('temperature', { min: zero - 40, max: zero + 120 }),
  'Temperature of the air around it, at its highest in service.',
  { example: '55 degC' },
)
