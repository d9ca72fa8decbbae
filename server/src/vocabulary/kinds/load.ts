import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'

export const load = block({
  kind: 'load',
  doc: 'What a DC network feeds besides propulsion: lights, pumps, instruments.',
  heading: 'name',
  within: ['top', 'drive'],
  many: true,
  facts: {
    power: fact(amount('power', { min: 0.01, max: 1e7 }), 'Power it draws when on.', {
      from: 'draft',
      or: 'current',
      example: '600 W',
    }),
    current: fact(
      amount('current', { min: 1e-3, max: 2e4 }),
      'Current it draws when on, where it is not a power.',
      { example: '25 A' },
    ),
    voltage: fact(amount('voltage', { min: 1, max: 1500 }), 'Voltage it is made for.', {
      from: 'for-review',
      example: '96 V',
    }),
    duty: fact(
      amount('ratio', { min: 1e-4, max: 1 }),
      'Share of the time it is on, over the hours that the battery must last. If not stated, it is always on. Cables and fuses are sized for it on.',
      { example: '50 %' },
    ),
  },
  example: `load house {
  power:   600 W
  voltage: 96 V
  duty:    50 %
}`,
})
