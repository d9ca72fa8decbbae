import { block, fact } from '../block.ts'
import { amount, band, endMissing, yesNo } from '../shape.ts'

export const converter = block({
  kind: 'converter',
  doc: 'A DC-DC converter. A cable `to` it reaches its input; a cable `from` it leaves its output.',
  heading: 'name',
  within: ['top', 'drive'],
  many: true,
  facts: {
    input: fact(band('voltage', { min: 1, max: 1500 }), 'Input voltage it accepts.', {
      lacks: endMissing,
      from: 'draft',
      example: '72..120 V',
    }),
    output: fact(band('voltage', { min: 1, max: 1500 }), 'Lowest and highest output voltage.', {
      lacks: endMissing,
      from: 'draft',
      example: '26..28 V',
    }),
    current: fact(amount('current', { min: 0.01, max: 2e4 }), 'The most current it gives at its output.', {
      from: 'draft',
      example: '40 A',
    }),
    efficiency: fact(amount('ratio', { min: 0.01, max: 1 }), 'Efficiency at rated load.', {
      from: 'issued',
      example: '92 %',
    }),
    isolated: fact(yesNo, 'Whether its output is isolated from its input.', {
      from: 'issued',
      example: 'yes',
    }),
  },
  example: `converter low-voltage {
  input:   72..120 V
  output:  26..28 V
  current: 40 A
}`,
})
