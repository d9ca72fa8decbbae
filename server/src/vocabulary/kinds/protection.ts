import { block, fact } from '../block.ts'
import { amount, choice, reference, yesNo } from '../shape.ts'
import { points } from '../shapes/points.ts'
import { ambient } from './ambient.ts'
import { networkParts } from './network-parts.ts'
import { terminalFacts } from './terminal-facts.ts'

/** Classes of IEC 60269 and of UL 248. */
const fuseClasses = [
  ...['gG', 'gBat', 'gR', 'gS', 'gPV', 'aR', 'aM'],
  ...['T', 'J', 'L', 'RK1', 'RK5', 'CC', 'G'],
  'other',
] as const

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
    'fuse-class': fact(
      choice(fuseClasses),
      'Class of the fuse: of IEC 60269 (`gG`) or of UL 248 (`T`). `other` if it has none of them.',
      { from: 'issued', when: { fact: 'kind', is: 'fuse' }, example: 'T' },
    ),
    clears: fact(
      points(
        { kind: 'current', limits: { min: 0.1, max: 1e6 }, words: 'current' },
        { kind: 'time', limits: { min: 1e-5, max: 1e5 }, words: 'time' },
        { falling: true },
      ),
      'Its curve, as the maker states it for DC: the time until the current has stopped, arc included, at several currents. It is never read beyond its ends.',
      { example: '945 A 100 s, 3 kA 0.1 s' },
    ),
    isolates: fact(yesNo, 'Whether its maker rates it as an isolator too. If not stated, no.', {
      example: 'yes',
    }),
    'selective-with': fact(
      reference('protection'),
      'The fuse or breaker nearer the battery that stays closed when this one opens, by a table of the maker.',
      { example: 'main-fuse' },
    ),
    place: fact(
      choice(['open', 'machinery-space']),
      'Where it is. A machinery space is warm, so it can carry less there. If not stated, its rating counts as it is.',
      { example: 'machinery-space' },
    ),
    ambient,
    ...terminalFacts,
  },
  example: `protection main-fuse {
  kind:   fuse
  rating: 250 A
  in:     feed
  at:     150 mm
}`,
})
