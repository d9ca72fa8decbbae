import { block, fact } from '../block.ts'
import { amount, band, endMissing } from '../shape.ts'

export const battery = block({
  kind: 'battery',
  doc: 'A battery bank. A bank cannot be switched off: treat every terminal as live.',
  heading: 'name',
  within: ['top', 'drive'],
  many: true,
  facts: {
    nominal: fact(amount('voltage', { min: 1, max: 1500 }), 'Nominal voltage.', {
      from: 'draft',
      example: '96 V',
    }),
    window: fact(
      band('voltage', { min: 1, max: 1500 }),
      'Lowest and highest voltage in use. Currents are calculated at the low end. From `issued` on both ends are asked for.',
      {
        lacks: endMissing,
        from: 'for-review',
        example: '84..108 V',
      },
    ),
    capacity: fact(amount('charge', { min: 3600, max: 3.6e8 }), 'Rated capacity.', {
      from: 'draft',
      example: '210 Ah',
    }),
    'internal-resistance': fact(
      amount('resistance', { min: 1e-6, max: 100 }),
      'Resistance of the whole bank.',
      {
        from: 'for-review',
        or: 'short-circuit-current',
        example: '14 mohm',
      },
    ),
    'short-circuit-current': fact(
      amount('current', { min: 1, max: 1e6 }),
      'Short-circuit current stated by the maker.',
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
