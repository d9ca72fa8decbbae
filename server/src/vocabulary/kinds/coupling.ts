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
      example: 'flexible',
    }),
    pilot: fact(yesNo, 'Whether a pilot (spigot) holds the flanges concentric.', { example: 'no' }),
    'flange-diameter': fact(amount('length', { min: 0.01, max: 3 }), 'Outer diameter of the flange.', {
      example: '125 mm',
      required: true,
    }),
    'gauge-diameter': fact(amount('length', { min: 0.01, max: 3 }), 'Diameter on which the gauge goes in.', {
      example: '110 mm',
    }),
    'gap-variation': fact(
      upperLimit('length', { min: 1e-6, max: 0.01 }),
      'Greatest less least gap that is allowed round the faces.',
      {
        example: 'max 0.10 mm',
      },
    ),
    offset: fact(
      upperLimit('length', { min: 1e-6, max: 0.01 }),
      'Distance between the two axes that is allowed.',
      {
        example: 'max 0.15 mm',
      },
    ),
    'max-offset': fact(
      amount('length', { min: 1e-6, max: 0.1 }),
      'Offset that the flexible element is rated for in service. It says what the element survives, not how it is to be aligned: that is `offset`.',
      { example: '0.5 mm' },
    ),
    'max-angle': fact(
      amount('angle', { min: deg / 1000, max: 30 * deg }),
      'Angle between the two axes that the flexible element is rated for in service. It says what the element survives, not how it is to be aligned: that is `gap-variation`.',
      { example: '1 deg' },
    ),
    'rated-torque': fact(amount('torque', { min: 0.1, max: 1e7 }), 'Torque the coupling is rated for.', {
      example: '400 N·m',
    }),
    bolts: fact(bolts, 'Coupling bolts: number, thread, class, tightening torque.', {
      example: '4 x M10 class 8.8, 45 N·m',
    }),
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
