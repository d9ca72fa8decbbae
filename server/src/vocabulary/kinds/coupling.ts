import { block, fact } from '../block.ts'
import { amount, choice, upperLimit, yesNo } from '../shape.ts'
import { bolts } from '../shapes/bolts.ts'

const deg = Math.PI / 180

export const coupling = block({
  kind: 'coupling',
  doc: 'The coupling between shaft and machine, where the gaps are read.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    kind: fact(choice(['rigid', 'flexible']), 'Rigid flanges, or with a flexible element.', {
      from: 'draft',
      example: 'flexible',
    }),
    pilot: fact(yesNo, 'Whether a pilot (spigot) holds the flanges concentric.', {
      from: 'issued',
      example: 'no',
    }),
    'flange-diameter': fact(amount('length', { min: 0.01, max: 3 }), 'Outer diameter of the flange.', {
      from: 'draft',
      example: '125 mm',
    }),
    'gauge-diameter': fact(
      amount('length', { min: 0.01, max: 3 }),
      'Diameter of the circle where the gauge goes in.',
      {
        from: 'as-built',
        example: '110 mm',
      },
    ),
    'gap-variation': fact(
      upperLimit('length', { min: 1e-6, max: 0.01 }),
      'Allowed difference between the greatest and the least gap round the faces.',
      {
        from: 'issued',
        example: 'max 0.10 mm',
      },
    ),
    offset: fact(upperLimit('length', { min: 1e-6, max: 0.01 }), 'Allowed distance between the two axes.', {
      from: 'issued',
      example: 'max 0.15 mm',
    }),
    'max-offset': fact(
      amount('length', { min: 1e-6, max: 0.1 }),
      'Offset that the flexible element is rated for in service. This is what the element can stand, not the alignment limit: that is `offset`.',
      { example: '0.5 mm' },
    ),
    'max-angle': fact(
      amount('angle', { min: deg / 1000, max: 30 * deg }),
      'Angle between the two axes that the flexible element is rated for in service. This is what the element can stand, not the alignment limit: that is `gap-variation`.',
      { example: '1 deg' },
    ),
    'rated-torque': fact(amount('torque', { min: 0.1, max: 1e7 }), 'Rated torque of the coupling.', {
      from: 'for-review',
      example: '400 N·m',
    }),
    'peak-torque': fact(
      amount('torque', { min: 0.1, max: 1e7 }),
      'Torque that the coupling can take for a short time.',
      { example: '800 N·m' },
    ),
    bolts: fact(
      bolts,
      'Coupling bolts: number, thread, class, tightening torque. From `issued` on the torque is asked for.',
      {
        lacks: ({ torque }) => (torque === undefined ? 'torque' : undefined),
        from: 'issued',
        example: '4 x M10 class 8.8, 45 N·m',
      },
    ),
  },
  example: `coupling {
  kind:            flexible
  flange-diameter: 125 mm
  gauge-diameter:  110 mm
  gap-variation:   max 0.10 mm [maker]
  offset:          max 0.15 mm [maker]
  bolts:           4 x M10 class 8.8, 45 N·m
}`,
})
