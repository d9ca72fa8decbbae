import { block, fact } from '../block.ts'
import { amount, choice, count, reference, upperLimit } from '../shape.ts'

export const cable = block({
  kind: 'cable',
  doc: 'A cable from one device to another: both conductors of a DC pair, or the three phases.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  facts: {
    from: fact(reference('battery', 'controller', 'motor', 'protection'), 'Where it starts.', {
      example: 'controller',
      required: true,
    }),
    to: fact(reference('battery', 'controller', 'motor', 'protection'), 'Where it ends.', {
      example: 'main',
      required: true,
    }),
    conductor: fact(amount('area', { min: 1e-7, max: 1e-3 }), 'Section of each conductor.', {
      example: '35 mm2',
      required: true,
    }),
    parallel: fact(count({ min: 1, max: 20 }), 'Conductors side by side on each pole or phase.', {
      example: '1',
    }),
    length: fact(amount('length', { min: 0.01, max: 1000 }), 'Length one way.', {
      example: '1.8 m',
      required: true,
    }),
    insulation: fact(
      amount('temperature', { min: 333.15, max: 523.15 }),
      'Temperature the insulation is rated for.',
      {
        example: '90 degC',
        required: true,
      },
    ),
    place: fact(choice(['open', 'machinery-space']), 'Where it lies: machinery spaces are warm.', {
      example: 'machinery-space',
    }),
    bundled: fact(
      count({ min: 1, max: 100 }),
      'Current-carrying conductors in the bundle, its own included.',
      { example: '3' },
    ),
    system: fact(choice(['dc', 'three-phase']), 'What it carries, where from and to do not say it.', {
      example: 'three-phase',
    }),
    current: fact(
      amount('current', { min: 0.01, max: 2e4 }),
      'Continuous current, where it is not to be worked out from the motor.',
      {
        example: '160 A',
      },
    ),
    drop: fact(upperLimit('ratio', { min: 1e-4, max: 1 }), 'Voltage drop that is allowed.', {
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
