import { block, fact } from '../block.ts'
import { amount, band } from '../shape.ts'

export const battery = block({
  kind: 'battery',
  doc: 'A battery bank. Banks cannot be switched off: treat every terminal as live.',
  heading: 'name',
  within: ['top', 'drive'],
  many: true,
  facts: {
    nominal: fact(amount('voltage', { min: 1, max: 1500 }), 'Nominal voltage.', {
      example: '96 V',
      required: true,
    }),
    window: fact(
      band('voltage', { min: 1, max: 1500 }),
      'Lowest and highest voltage in use. Currents are worked out at the low end.',
      {
        example: '84..108 V',
      },
    ),
    capacity: fact(amount('charge', { min: 3600, max: 3.6e8 }), 'Rated capacity.', { example: '210 Ah' }),
    'internal-resistance': fact(
      amount('resistance', { min: 1e-6, max: 100 }),
      'Resistance of the whole bank.',
      {
        example: '14 mohm',
      },
    ),
    'short-circuit-current': fact(
      amount('current', { min: 1, max: 1e6 }),
      'Short-circuit current as the maker states it.',
      {
        example: '8 kA',
      },
    ),
  },
  example: `battery house {
  nominal:             96 V
  window:              84..108 V
  capacity:            210 Ah
  internal-resistance: 14 mohm [maker]
}`,
})
