import { block, fact } from '../block.ts'
import { amount, choice, reference, yesNo } from '../shape.ts'
import { networkParts } from './network-parts.ts'
import { terminalFacts } from './terminal-facts.ts'

export const isolator = block({
  kind: 'isolator',
  doc: 'A switch that isolates part of the DC network by hand. Behind it, prove dead before touching anything.',
  heading: 'name',
  within: ['top', 'drive'],
  many: true,
  facts: {
    current: fact(amount('current', { min: 0.1, max: 2e4 }), 'Continuous current it is rated for.', {
      from: 'for-review',
      example: '500 A',
    }),
    voltage: fact(amount('voltage', { min: 1, max: 1500 }), 'Rated DC voltage.', {
      from: 'for-review',
      example: '150 V',
    }),
    in: fact(reference('cable'), 'The cable it is in. Not needed where cables end at it.', {
      example: 'feed',
    }),
    at: fact(
      amount('length', { min: 0, max: 1000 }),
      'Where in that cable: length of cable between its `from` end and the isolator.',
      { example: '300 mm' },
    ),
    from: fact(reference(...networkParts), 'The part that its supply side is bolted to, without a cable.', {
      example: 'house',
    }),
    to: fact(reference(...networkParts), 'The part that its outgoing side is bolted to, without a cable.', {
      example: 'bus',
    }),
    poles: fact(choice(['positive', 'negative', 'both']), 'The poles it opens.', {
      from: 'issued',
      example: 'both',
    }),
    interrupts: fact(amount('current', { min: 0.1, max: 1e6 }), 'DC current it can break.', {
      from: 'issued',
      example: '500 A',
    }),
    withstand: fact(amount('current', { min: 1, max: 1e6 }), 'Short-time current it withstands.', {
      from: 'issued',
      example: '20 kA',
    }),
    lockable: fact(yesNo, 'Whether it can be locked open.', { from: 'issued', example: 'yes' }),
    ...terminalFacts,
  },
  example: `isolator main-isolator {
  current: 500 A
  voltage: 150 V
}`,
})
