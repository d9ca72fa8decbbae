import { block, fact } from '../block.ts'
import { amount, choice, reference } from '../shape.ts'
import { terminalFacts } from './terminal-facts.ts'

export const protection = block({
  kind: 'protection',
  doc: 'A fuse or circuit breaker.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  facts: {
    kind: fact(choice(['fuse', 'circuit-breaker']), 'What it is.', { from: 'draft', example: 'fuse' }),
    rating: fact(amount('current', { min: 0.1, max: 2e4 }), 'Rated current.', {
      from: 'draft',
      example: '250 A',
    }),
    protects: fact(
      reference('cable'),
      'The cable it protects. Where cables end at the fuse or breaker, it protects what lies behind it.',
      { from: 'draft', example: 'feed' },
    ),
    interrupts: fact(
      amount('current', { min: 1, max: 1e6 }),
      'DC current it can interrupt at the voltage of the circuit. It is compared with the short-circuit current of the battery.',
      {
        from: 'for-review',
        example: '20 kA',
      },
    ),
    voltage: fact(amount('voltage', { min: 1, max: 1500 }), 'Rated DC voltage.', {
      from: 'for-review',
      example: '125 V',
    }),
    'from-source': fact(
      amount('length', { min: 0, max: 100 }),
      'Length of conductor between the battery terminal and the fuse or breaker.',
      {
        from: 'issued',
        example: '150 mm',
      },
    ),
    ...terminalFacts,
  },
  example: `protection main-fuse {
  kind:     fuse
  rating:   250 A
  protects: feed
}`,
})
