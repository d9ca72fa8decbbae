import { block, fact } from '../block.ts'
import { amount, band, choice, endMissing } from '../shape.ts'
import { terminalFacts } from './terminal-facts.ts'

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
    chemistry: fact(
      choice(['lfp', 'nmc', 'lto', 'agm', 'gel', 'flooded']),
      'Lithium iron phosphate, nickel manganese cobalt, lithium titanate; or lead: absorbent glass mat, gel, flooded.',
      { example: 'lfp' },
    ),
    current: fact(
      amount('current', { min: 0.1, max: 1e5 }),
      'Highest continuous discharge current that the maker permits.',
      { example: '210 A' },
    ),
    'peak-current': fact(
      amount('current', { min: 0.1, max: 1e5 }),
      'Highest discharge current that the maker permits for `peak-time`.',
      { example: '420 A' },
    ),
    'peak-time': fact(amount('time', { min: 0.1, max: 7200 }), 'How long the maker permits `peak-current`.', {
      from: 'issued',
      when: { fact: 'peak-current' },
      example: '30 s',
    }),
    'charge-current': fact(
      amount('current', { min: 0.1, max: 1e5 }),
      'Highest continuous charge current that the maker permits.',
      { example: '100 A' },
    ),
    usable: fact(
      amount('ratio', { min: 0.05, max: 1 }),
      'Share of the capacity that may be taken out. If not stated, 80 % of a lithium bank and 50 % of a lead one.',
      { example: '80 %' },
    ),
    'peukert-exponent': fact(
      amount('ratio', { min: 1, max: 2 }),
      'How much capacity a faster discharge costs: the exponent of Peukert, for lead. 1 costs nothing.',
      { example: '1.2' },
    ),
    'hour-rate': fact(
      amount('time', { min: 1800, max: 7.2e5 }),
      'The time of discharge that the capacity is stated for: `20 h`.',
      { example: '20 h' },
    ),
    ...terminalFacts,
  },
  example: `battery house {
  nominal:             96 V
  window:              84..108 V
  capacity:            210 Ah
  internal-resistance: 14 mohm [maker]
}`,
})
