import { block, fact } from '../block.ts'
import { amount, choice, reference } from '../shape.ts'
import { networkParts } from './network-parts.ts'
import { terminalFacts } from './terminal-facts.ts'

export const contactor = block({
  kind: 'contactor',
  doc: 'A switch that the controller or a management system closes and opens. It is open without power.',
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
      'Where in that cable: length of cable between its `from` end and the contactor.',
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
    makes: fact(
      amount('current', { min: 0.1, max: 1e6 }),
      'DC current it can close on, such as what precharge has left.',
      { example: '500 A' },
    ),
    ...terminalFacts,
  },
  example: `contactor main-contactor {
  current: 500 A
  voltage: 150 V
}`,
})
