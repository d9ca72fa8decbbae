import { block, fact } from '../block.ts'
import { amount, band, endMissing, names, yesNo } from '../shape.ts'
import { words } from '../shapes/words.ts'
import { sensorKinds } from './sensor.ts'
import { terminalFacts } from './terminal-facts.ts'

export const controller = block({
  kind: 'controller',
  doc: 'The motor controller. It stays charged after it is switched off.',
  heading: 'none',
  within: ['drive', 'top'],
  many: true,
  facts: {
    input: fact(
      band('voltage', { min: 1, max: 1500 }),
      'Input voltage it accepts. From `issued` on both ends are asked for.',
      {
        lacks: endMissing,
        from: 'draft',
        example: '72..120 V',
      },
    ),
    terminals: fact(
      names,
      'Marks of the phase terminals, in the order in which the phases follow one another going ahead. The order counts, not the alphabet.',
      { from: 'for-review', example: 'A, B, C' },
    ),
    reversed: fact(yesNo, 'Whether its setting for the direction of the motor is reversed.', {
      from: 'as-built',
      perDrive: true,
      example: 'no',
    }),
    capacitance: fact(amount('capacitance', { min: 1e-9, max: 10 }), 'Capacitance across its input.', {
      from: 'for-review',
      example: '6.8 mF',
    }),
    'built-in-precharge': fact(
      yesNo,
      'Whether it charges its capacitance itself before it connects it to the battery.',
      { example: 'no' },
    ),
    'discharge-resistance': fact(
      amount('resistance', { min: 0.1, max: 1e9 }),
      'Resistance that discharges its capacitance, across its input.',
      { example: '10 kohm' },
    ),
    efficiency: fact(amount('ratio', { min: 0.01, max: 1 }), 'Efficiency at rated load.', {
      from: 'issued',
      example: '96 %',
    }),
    current: fact(amount('current', { min: 0.1, max: 2e4 }), 'Continuous output current.', {
      from: 'for-review',
      example: '220 A',
    }),
    'peak-current': fact(amount('current', { min: 0.1, max: 2e4 }), 'Output current for `peak-time`.', {
      from: 'issued',
      example: '330 A',
    }),
    'peak-time': fact(
      amount('time', { min: 0.1, max: 7200 }),
      'How long it can give `peak-current` from working temperature.',
      { from: 'issued', example: '60 s' },
    ),
    'phase-current-limit': fact(
      amount('current', { min: 0.1, max: 2e4 }),
      'Highest output current of each phase, as it is set.',
      { from: 'as-built', perDrive: true, example: '300 A' },
    ),
    'input-current-limit': fact(
      amount('current', { min: 0.1, max: 2e4 }),
      'Highest current that it takes from the battery, as it is set. The current of its cable is not taken from it.',
      { from: 'as-built', perDrive: true, example: '250 A' },
    ),
    'charge-limit': fact(
      amount('current', { min: 0, max: 2e4 }),
      'Highest current that it gives back to the battery when it brakes, as it is set. `0 A` if it gives none.',
      { from: 'as-built', perDrive: true, example: '60 A' },
    ),
    'speed-limit': fact(
      amount('rotational speed', { min: (2 * Math.PI) / 60, max: (50_000 * 2 * Math.PI) / 60 }),
      'Highest speed of the motor, as it is set.',
      { from: 'as-built', perDrive: true, example: '2200 rpm' },
    ),
    'sensor-input': fact(
      words([...sensorKinds, 'none'], 'kinds of temperature sensor'),
      'The kinds of temperature sensor it can read, as set or wired. `none` if it has no such input.',
      { from: 'for-review', example: 'pt1000, ntc' },
    ),
    ...terminalFacts,
  },
  example: `controller {
  input:       72..120 V
  terminals:   A, B, C
  capacitance: 6.8 mF
}`,
})
