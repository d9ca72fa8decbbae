import { block, fact } from '../block.ts'
import { amount, band, names } from '../shape.ts'

export const controller = block({
  kind: 'controller',
  doc: 'The motor controller. It holds charge after it is switched off.',
  heading: 'none',
  within: ['drive', 'top'],
  many: true,
  facts: {
    input: fact(band('voltage', { min: 1, max: 1500 }), 'Input voltage it accepts.', {
      example: '72..120 V',
    }),
    terminals: fact(names, 'Marks of the phase terminals.', { example: 'A, B, C' }),
    capacitance: fact(amount('capacitance', { min: 1e-9, max: 10 }), 'Capacitance across its input.', {
      example: '6.8 mF',
    }),
    efficiency: fact(amount('ratio', { min: 0.01, max: 1 }), 'Efficiency at rated load.', {
      example: '96 %',
    }),
    current: fact(amount('current', { min: 0.1, max: 2e4 }), 'Continuous output current.', {
      example: '220 A',
    }),
  },
  example: `controller {
  input:       72..120 V
  terminals:   A, B, C
  capacitance: 6.8 mF
}`,
})
