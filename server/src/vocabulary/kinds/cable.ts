import { block, fact } from '../block.ts'
import { amount, choice, count, reference, upperLimit } from '../shape.ts'

export const cable = block({
  kind: 'cable',
  doc: 'A cable from one device to another: both conductors of a DC pair, or the three phases.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  facts: {
    from: fact(
      reference('battery', 'controller', 'motor', 'protection'),
      'Where it starts. A cable from a fuse or breaker leaves it on the side away from the battery.',
      {
        from: 'draft',
        example: 'controller',
      },
    ),
    to: fact(
      reference('battery', 'controller', 'motor', 'protection'),
      'Where it ends. A cable to a fuse or breaker reaches it on the side of the battery.',
      {
        from: 'draft',
        example: 'main',
      },
    ),
    conductor: fact(amount('area', { min: 1e-7, max: 1e-3 }), 'Cross-section of each conductor.', {
      from: 'draft',
      example: '35 mm2',
    }),
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
    current: fact(
      amount('current', { min: 0.01, max: 2e4 }),
      'Continuous current. If stated, it replaces the current calculated from the motor.',
      {
        example: '160 A',
      },
    ),
    drop: fact(upperLimit('ratio', { min: 1e-4, max: 1 }), 'Allowed voltage drop.', {
      example: 'max 3 %',
    }),
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
