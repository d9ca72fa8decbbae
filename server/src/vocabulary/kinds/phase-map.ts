import { block, fact } from '../block.ts'
import { pairs } from '../shapes/pairs.ts'

export const phaseMap = block({
  kind: 'phase-map',
  doc: 'Which controller terminal goes to which motor terminal.',
  heading: 'none',
  within: ['drive'],
  many: false,
  perDrive: true,
  facts: {
    pairs: fact(
      pairs,
      'Each controller terminal with its motor terminal. The name `pairs` can be left out.',
      {
        from: 'issued',
        example: 'A to U, B to V, C to W',
      },
    ),
  },
  bare: 'pairs',
  example: 'phase-map { A to U, B to V, C to W }',
})
