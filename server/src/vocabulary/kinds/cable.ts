import { block, fact } from '../block.ts'
import { amount, choice, count, reference, upperLimit, yesNo } from '../shape.ts'
import { conductorClass } from '../shapes/conductor-class.ts'
import { marked } from '../shapes/marked.ts'
import { lugs } from '../shapes/studs.ts'
import { ambient } from './ambient.ts'
import { networkParts } from './network-parts.ts'

export const cable = block({
  kind: 'cable',
  doc: 'A cable from one device to another: both conductors of a DC pair, one of them where it states its `pole`, or the three phases.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  rewritten: { current: (amount) => `design-current: ${amount}` },
  facts: {
    from: fact(
      reference(...networkParts),
      'Where it starts. A cable from a fuse, breaker or switch leaves it on its outgoing side, one from a converter leaves its output.',
      {
        from: 'draft',
        example: 'controller',
      },
    ),
    to: fact(
      reference(...networkParts),
      'Where it ends. A cable to a fuse, breaker or switch reaches it on its supply side, one to a converter its input.',
      {
        from: 'draft',
        example: 'main',
      },
    ),
    conductor: fact(
      amount('area', { min: 1e-7, max: 1e-3 }),
      'Cross-section of each conductor: `35 mm2`, `2/0 AWG`, `2/0 SAE`. SAE cable has 3 to 12 % less copper than the AWG of its number.',
      {
        from: 'draft',
        example: '35 mm2',
      },
    ),
    parallel: fact(count({ min: 1, max: 20 }), 'Conductors in parallel on each pole or phase.', {
      example: '1',
    }),
    length: fact(amount('length', { min: 0.01, max: 1000 }), 'Length one way.', {
      from: 'draft',
      example: '1.8 m',
    }),
    insulation: fact(
      amount('temperature', { min: 333.15, max: 523.15 }),
      'Temperature rating of the insulation.',
      {
        from: 'draft',
        example: '90 degC',
      },
    ),
    place: fact(
      choice(['open', 'machinery-space']),
      'Where the cable runs. A machinery space is warm, so the cable can carry less there.',
      {
        from: 'for-review',
        example: 'machinery-space',
      },
    ),
    ambient,
    bundled: fact(
      count({ min: 1, max: 100 }),
      'Current-carrying conductors in the bundle, including its own.',
      { from: 'for-review', example: '3' },
    ),
    system: fact(
      choice(['dc', 'three-phase']),
      'Whether it carries DC or three phases. Needed only if `from` and `to` do not show it.',
      {
        example: 'three-phase',
      },
    ),
    pole: fact(
      choice(['positive', 'negative', 'series']),
      'The pole, where the cable has one conductor. If not stated, it has both. `series`: from the negative of one battery to the positive of the next. Such batteries are one string: their voltages add up.',
      { example: 'positive' },
    ),
    'design-current': fact(
      amount('current', { min: 0.01, max: 2e4 }),
      'Continuous current it is sized for, where it is not the one calculated from the network.',
      {
        example: '160 A',
      },
    ),
    drop: fact(upperLimit('ratio', { min: 1e-4, max: 1 }), 'Allowed voltage drop.', {
      example: 'max 3 %',
    }),
    voltage: fact(amount('voltage', { min: 1, max: 20_000 }), 'Rated voltage of the insulation.', {
      from: 'for-review',
      example: '600 V',
    }),
    'conductor-class': fact(
      conductorClass,
      'Class of the strands, IEC 60228: 2 stranded, 5 flexible, 6 extra flexible. If not stated, 5.',
      { from: 'issued', example: '5' },
    ),
    tinned: fact(yesNo, 'Whether its copper is tinned. If not stated, yes.', {
      from: 'issued',
      example: 'yes',
    }),
    sheathed: fact(yesNo, 'Whether a sheath, conduit or enclosure covers it all the way.', {
      from: 'issued',
      example: 'yes',
    }),
    lugs: fact(lugs, 'Threads that its lugs are made for: one for both ends, or at `from` and at `to`.', {
      from: 'issued',
      example: 'M10, M8',
    }),
    'bend-radius': fact(
      amount('length', { min: 0, max: 100 }),
      'Its tightest bend, as laid: radius at the inside.',
      { from: 'as-built', perDrive: true, example: '90 mm' },
    ),
    'min-bend-radius': fact(
      amount('length', { min: 1e-3, max: 10 }),
      'Tightest bend that its maker allows when it is fixed: radius at the inside.',
      { example: '60 mm' },
    ),
    'outer-diameter': fact(
      amount('length', { min: 5e-4, max: 0.2 }),
      'Outer diameter of one cable. The bend allowed follows from it if `min-bend-radius` is not stated.',
      { example: '17 mm' },
    ),
    'support-spacing': fact(
      amount('length', { min: 0, max: 100 }),
      'The longest distance between two supports, as laid.',
      { from: 'as-built', perDrive: true, example: '400 mm' },
    ),
    'signal-spacing': fact(
      amount('length', { min: 0, max: 100 }),
      'The least distance to a signal cable that runs beside it.',
      { from: 'as-built', perDrive: true, example: '250 mm' },
    ),
    'phase-lengths': fact(
      marked({
        kind: 'length',
        limits: { min: 0.01, max: 1000 },
        marks: 'terminals',
        example: 'U 1.80 m, V 1.82 m, W 1.79 m',
      }),
      'Length of the cable of each phase, by the terminal of the motor.',
      { onBoat: true, perDrive: true, example: 'U 1.80 m, V 1.82 m, W 1.79 m' },
    ),
  },
  example: `cable phases {
  from:       controller
  to:         main
  conductor:  35 mm2
  length:     1.8 m
  insulation: 90 degC
  place:      machinery-space
}`,
})
