import { block, fact } from '../block.ts'
import { amount, choice, reference } from '../shape.ts'
import { networkParts } from './network-parts.ts'
import { terminalFacts } from './terminal-facts.ts'

export const protection = block({
  kind: 'protection',
  doc: 'A fuse or circuit breaker. It is in a cable, or cables end at it. What it protects follows from where it is: all that lies behind it as the current can flow, up to the next one.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  rewritten: { protects: (cable) => `in: ${cable}`, 'from-source': (length) => `at: ${length}` },
  facts: {
    kind: fact(choice(['fuse', 'circuit-breaker']), 'What it is.', { from: 'draft', example: 'fuse' }),
    rating: fact(amount('current', { min: 0.1, max: 2e4 }), 'Rated current.', {
      from: 'draft',
      example: '250 A',
    }),
    in: fact(
      reference('cable'),
      'The cable it is in. Not needed where cables end at it, or where it is bolted to a part.',
      { example: 'feed' },
    ),
    at: fact(
      amount('length', { min: 0, max: 1000 }),
      'Where in that cable: length of cable between its `from` end and the fuse or breaker. If not stated, it is assumed at the battery, or at the `from` end where neither end is at a battery.',
      { from: 'for-review', when: { fact: 'in' }, example: '150 mm' },
    ),
    from: fact(reference(...networkParts), 'The part that its supply side is bolted to, without a cable.', {
      example: 'house',
    }),
    to: fact(reference(...networkParts), 'The part that its outgoing side is bolted to, without a cable.', {
      example: 'bus',
    }),
    interrupts: fact(
      amount('current', { min: 1, max: 1e6 }),
      'DC current it can interrupt at the voltage of the circuit. It is compared with the short-circuit current of the batteries.',
      {
        from: 'for-review',
        example: '20 kA',
      },
    ),
    voltage: fact(amount('voltage', { min: 1, max: 1500 }), 'Rated DC voltage.', {
      from: 'for-review',
      example: '125 V',
    }),
    poles: fact(
      choice(['positive', 'negative', 'both']),
      'The poles it opens. A cable with one in each pole has one block with `both`.',
      { from: 'issued', example: 'positive' },
    ),
    ...terminalFacts,
  },
  example: `protection main-fuse {
  kind:   fuse
  rating: 250 A
  in:     feed
  at:     150 mm
}`,
})
