import { block, fact } from '../block.ts'
import { amount, choice, names } from '../shape.ts'
import { points } from '../shapes/points.ts'
import { terminalFacts } from './terminal-facts.ts'

const rpm = (2 * Math.PI) / 60

export const motor = block({
  kind: 'motor',
  doc: 'An electric motor.',
  heading: 'none',
  within: ['drive', 'top'],
  many: true,
  rewritten: { 'winding-sensor': (kind) => `sensor winding { kind: ${kind} }` },
  needs: { issued: ['sensor'] },
  facts: {
    power: fact(amount('power', { min: 1, max: 1e7 }), 'Rated shaft power.', {
      from: 'draft',
      example: '15 kW',
    }),
    speed: fact(amount('rotational speed', { min: rpm, max: 50_000 * rpm }), 'Rated speed.', {
      from: 'for-review',
      example: '1500 rpm',
    }),
    'max-speed': fact(
      amount('rotational speed', { min: rpm, max: 50_000 * rpm }),
      'Highest speed that the maker permits. If not stated, results take the rated speed for it.',
      { example: '2400 rpm' },
    ),
    'torque-curve': fact(
      points(
        { kind: 'rotational speed', limits: { min: 0, max: 50_000 * rpm }, words: 'speed' },
        { kind: 'torque', limits: { min: 0, max: 1e7 }, words: 'torque' },
      ),
      'Continuous torque over the speed. If not stated: the rated torque up to the rated speed, and the rated power above.',
      { example: '0 rpm 95 N·m, 1500 rpm 95 N·m, 2400 rpm 60 N·m' },
    ),
    'peak-torque': fact(
      amount('torque', { min: 0.01, max: 1e7 }),
      'Torque that it can give for `peak-time`.',
      { example: '150 N·m' },
    ),
    'peak-time': fact(
      amount('time', { min: 0.1, max: 7200 }),
      'How long it can give `peak-torque` from working temperature.',
      { example: '60 s' },
    ),
    mass: fact(amount('mass', { min: 0.1, max: 1e5 }), 'Mass.', { from: 'issued', example: '62 kg' }),
    voltage: fact(amount('voltage', { min: 1, max: 1500 }), 'Rated voltage between two phases, rms.', {
      from: 'for-review',
      example: '60 V',
    }),
    'power-factor': fact(amount('ratio', { min: 0.01, max: 1 }), 'Power factor at rated load.', {
      from: 'issued',
      example: '0.9',
    }),
    efficiency: fact(amount('ratio', { min: 0.01, max: 1 }), 'Efficiency at rated load.', {
      from: 'issued',
      example: '92 %',
    }),
    terminals: fact(
      names,
      'Marks of the phase terminals, in the order in which the phases follow one another. The order counts, not the alphabet.',
      { from: 'for-review', example: 'U, V, W' },
    ),
    turns: fact(
      choice(['clockwise', 'counter-clockwise']),
      'How it turns with the phases in the order of its `terminals`, facing its drive end (IEC 60034-8).',
      { from: 'issued', example: 'clockwise' },
    ),
    'position-sensor': fact(
      choice(['none', 'hall', 'encoder', 'resolver']),
      'Sensor that gives the controller the angle of the rotor. With one, two exchanged phases are a fault and do not simply reverse the motor.',
      { from: 'issued', example: 'none' },
    ),
    'thermal-class': fact(
      choice(['A', 'E', 'B', 'F', 'H', 'N', 'R']),
      'Thermal class of the insulation of the winding, IEC 60085.',
      { from: 'for-review', example: 'F' },
    ),
    winding: fact(
      choice(['random', 'form']),
      'Whether the coils are wound of round wire at random, or formed of flat wire. If not stated, random.',
      { example: 'random' },
    ),
    'winding-insulation': fact(
      choice(['thermoplastic', 'thermosetting']),
      'What the insulation of the winding is. It decides how its resistance is corrected to 40 °C.',
      { example: 'thermosetting' },
    ),
    ...terminalFacts,
  },
  example: `motor main {
  power:     15 kW
  speed:     1500 rpm
  terminals: U, V, W
}`,
})
