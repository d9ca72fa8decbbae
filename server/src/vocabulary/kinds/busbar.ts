import { block, fact } from '../block.ts'
import { amount, choice } from '../shape.ts'
import { terminalFacts } from './terminal-facts.ts'

export const busbar = block({
  kind: 'busbar',
  doc: 'A bar, or a pair of bars for both poles, at which several cables end. All that end at it are at one voltage.',
  heading: 'name',
  within: ['top', 'drive'],
  many: true,
  facts: {
    current: fact(amount('current', { min: 0.1, max: 2e4 }), 'Continuous current it is rated for.', {
      from: 'for-review',
      example: '600 A',
    }),
    voltage: fact(amount('voltage', { min: 1, max: 1500 }), 'Rated DC voltage.', {
      from: 'issued',
      example: '150 V',
    }),
    withstand: fact(amount('current', { min: 1, max: 1e6 }), 'Short-time current it withstands.', {
      from: 'issued',
      example: '20 kA',
    }),
    diversity: fact(
      amount('ratio', { min: 0.1, max: 1 }),
      'Share of the sum of its branches that flows at once, at most. It counts for the busbar itself, never for its cables and fuses. If not stated, all of it.',
      { example: '80 %' },
    ),
    system: fact(
      choice(['dc', 'bonding']),
      'Whether it carries DC, or bonds metal parts. If not stated, DC.',
      { example: 'dc' },
    ),
    ...terminalFacts,
  },
  example: `busbar bus {
  current:   600 A
  voltage:   150 V
  withstand: 20 kA
}`,
})
