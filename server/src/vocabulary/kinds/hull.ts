import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'
import { points } from '../shapes/points.ts'

const knot = 1852 / 3600
const boatSpeed = { kind: 'speed', limits: { min: 0, max: 100 * knot }, words: 'boat speed' } as const
const force = { min: 0, max: 1e8 }

export const hull = block({
  kind: 'hull',
  doc: 'The hull, as far as the propeller needs to know it: what it takes to move it through the water.',
  heading: 'none',
  within: ['top'],
  many: false,
  facts: {
    displacement: fact(amount('mass', { min: 10, max: 1e8 }), 'Mass of the boat as it is used, loaded.', {
      from: 'for-review',
      example: '5.6 t',
    }),
    'waterline-length': fact(amount('length', { min: 1, max: 300 }), 'Length of the waterline.', {
      from: 'for-review',
      example: '9.2 m',
    }),
    'calm-water-resistance': fact(
      points(boatSpeed, { kind: 'force', limits: force, words: 'resistance' }),
      'Resistance of the hull in calm water at several speeds, without the propeller. Between two points it is a straight line. Beyond the last speed nothing is calculated from it.',
      { example: '4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN' },
    ),
    'wetted-area': fact(
      amount('area', { min: 0.5, max: 2e4 }),
      'Wetted area of the hull and what is fixed to it: for the friction, where `calm-water-resistance` is not stated.',
      { example: '24 m2' },
    ),
    'form-factor': fact(
      amount('ratio', { min: 0, max: 0.8 }),
      'How much more than the friction of a flat plate the hull has, `k` of 1 + k: `0.15`, not `1.15`.',
      { example: '0.15' },
    ),
    'wave-resistance': fact(
      points(boatSpeed, { kind: 'force', limits: force, words: 'wave resistance' }),
      'What the waves add at several speeds. It is asked for beside `wetted-area`: friction alone would be far too little.',
      { example: '4 kn 0.1 kN, 5 kn 0.25 kN, 6 kn 0.6 kN' },
    ),
    'wake-fraction': fact(
      amount('ratio', { min: -0.2, max: 0.7 }),
      'How much slower the water flows into the propeller than the boat moves, as a share of the speed of the boat.',
      { example: '15 %' },
    ),
    'thrust-deduction': fact(
      amount('ratio', { min: -0.1, max: 0.6 }),
      'Share of the thrust that is lost because the propeller draws water away from the stern.',
      { example: '12 %' },
    ),
  },
  example: `hull {
  displacement:          5.6 t
  waterline-length:      9.2 m
  calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN, 6 kn 1.05 kN   [drawing "R-02"]
  wake-fraction:         15 %
  thrust-deduction:      12 %
}`,
})
