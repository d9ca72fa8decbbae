import { block, fact } from '../block.ts'
import { amount, reference } from '../shape.ts'

export const precharge = block({
  kind: 'precharge',
  doc: 'A resistor that charges the capacitance of the controller before the contactor closes.',
  heading: 'none',
  within: ['drive', 'top'],
  many: true,
  facts: {
    around: fact(reference('contactor', 'isolator'), 'The switch that it bridges.', {
      from: 'draft',
      example: 'main-contactor',
    }),
    resistance: fact(amount('resistance', { min: 0.01, max: 1e6 }), 'Resistance.', {
      from: 'for-review',
      example: '47 ohm',
    }),
    energy: fact(
      amount('energy', { min: 1e-3, max: 3.6e6 }),
      'Energy of one pulse that the maker of the resistor permits.',
      { from: 'for-review', example: '120 J' },
    ),
    power: fact(amount('power', { min: 1e-3, max: 1e6 }), 'Continuous power it is rated for.', {
      from: 'for-review',
      example: '25 W',
    }),
    'closes-at': fact(
      amount('ratio', { min: 0.01, max: 1 }),
      'The switch closes when the capacitance has reached this share of the voltage of the battery.',
      { from: 'issued', or: 'closes-after', example: '95 %' },
    ),
    'closes-after': fact(amount('time', { min: 1e-3, max: 3600 }), 'The switch closes after this time.', {
      example: '2 s',
    }),
    interval: fact(
      amount('time', { min: 0.1, max: 86_400 }),
      'Shortest time from one precharge to the next.',
      { example: '60 s' },
    ),
  },
  example: `precharge {
  around:     main-contactor
  resistance: 47 ohm
  energy:     120 J
  power:      25 W
  closes-at:  95 %
}`,
})
