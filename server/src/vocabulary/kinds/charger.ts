import { block, fact } from '../block.ts'
import { amount, band, endMissing, yesNo } from '../shape.ts'

export const charger = block({
  kind: 'charger',
  doc: 'A charger for the batteries, from the shore or an alternator.',
  heading: 'name',
  within: ['top', 'drive'],
  many: true,
  facts: {
    output: fact(band('voltage', { min: 1, max: 1500 }), 'Lowest and highest voltage it charges at.', {
      lacks: endMissing,
      from: 'draft',
      example: '84..108 V',
    }),
    current: fact(amount('current', { min: 0.01, max: 2e4 }), 'The most current it gives.', {
      from: 'draft',
      example: '40 A',
    }),
    isolated: fact(yesNo, 'Whether its output is isolated from the shore supply.', {
      from: 'issued',
      example: 'yes',
    }),
  },
  example: `charger shore {
  output:  84..108 V
  current: 40 A
}`,
})
