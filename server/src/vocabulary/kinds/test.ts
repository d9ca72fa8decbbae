import { block, fact } from '../block.ts'
import { amount, choice, date, reference, text, yesNo } from '../shape.ts'
import { marked } from '../shapes/marked.ts'
import { permitted } from '../shapes/permitted.ts'

/** What can be tested. */
export const testKinds = [
  'insulation-resistance',
  'phase-resistance',
  'no-load-current',
  'precharge',
  'discharge',
  'rotation',
  'earth-leakage',
  'bonding',
  'sensor',
  'run-out',
] as const

const zero = 273.15
const rpm = (2 * Math.PI) / 60
/** Testers read insulation up to about 10 TΩ. */
const resistance = { min: 0, max: 1e13 }
const kindIs = (...is: readonly (typeof testKinds)[number][]) => ({ fact: 'kind', is })

export const test = block({
  kind: 'test',
  doc: 'A record of a test. Never change it afterwards: test again and add the next record. Of several records of one kind on one part, the last counts.',
  heading: 'name',
  within: ['drive', 'top'],
  many: true,
  perDrive: true,
  isRecord: true,
  facts: {
    kind: fact(choice(testKinds), 'What was tested.', {
      from: 'draft',
      onBoat: true,
      example: 'insulation-resistance',
    }),
    on: fact(
      reference('motor', 'cable', 'battery', 'busbar', 'controller', 'sensor', 'gear', 'shaft'),
      'The part that was tested. A sensor in a motor: `propulsion.winding`.',
      { from: 'draft', example: 'propulsion' },
    ),
    taken: fact(date, 'When it was tested.', { from: 'draft', onBoat: true, example: '2026-03-12' }),
    voltage: fact(
      amount('voltage', { min: 0, max: 2e4 }),
      'Voltage of the tester for insulation. For precharge and discharge, the voltage of the battery.',
      {
        from: 'draft',
        when: kindIs('insulation-resistance', 'precharge', 'discharge'),
        onBoat: true,
        example: '500 V',
      },
    ),
    resistance: fact(
      amount('resistance', resistance),
      'Resistance. For insulation, that after one minute. For a sensor, without its leads where they were measured apart.',
      {
        from: 'draft',
        when: kindIs('insulation-resistance', 'bonding', 'sensor'),
        onBoat: true,
        example: '180 Mohm',
      },
    ),
    'resistance-10-min': fact(
      amount('resistance', resistance),
      'Insulation resistance after ten minutes, for the polarisation index.',
      { onBoat: true, example: '450 Mohm' },
    ),
    resistances: fact(
      marked({
        kind: 'resistance',
        limits: { min: 0, max: 1e6 },
        marks: 'pairs of terminals',
        example: 'U-V 14.2 mohm, V-W 14.3 mohm, W-U 14.1 mohm',
      }),
      'Resistance between each two terminals.',
      {
        from: 'draft',
        when: kindIs('phase-resistance'),
        onBoat: true,
        example: 'U-V 14.2 mohm, V-W 14.3 mohm, W-U 14.1 mohm',
      },
    ),
    currents: fact(
      marked({
        kind: 'current',
        limits: { min: 0, max: 2e4 },
        marks: 'terminals',
        example: 'U 12 A, V 12 A, W 11.9 A',
      }),
      'Current of each phase.',
      {
        from: 'draft',
        when: kindIs('no-load-current'),
        onBoat: true,
        example: 'U 12 A, V 12 A, W 11.9 A',
      },
    ),
    speed: fact(amount('rotational speed', { min: 0, max: 50_000 * rpm }), 'Speed of the motor.', {
      from: 'for-review',
      when: kindIs('no-load-current'),
      onBoat: true,
      example: '1500 rpm',
    }),
    temperature: fact(
      amount('temperature', { min: zero - 40, max: zero + 300 }),
      'Temperature of what was tested. For a sensor, that of another thermometer beside it.',
      {
        from: 'for-review',
        when: kindIs('insulation-resistance', 'phase-resistance', 'sensor'),
        onBoat: true,
        example: '18 degC',
      },
    ),
    'end-voltage': fact(
      amount('voltage', { min: 0, max: 2000 }),
      'Voltage across the input of the controller at the end.',
      { from: 'draft', when: kindIs('precharge', 'discharge'), onBoat: true, example: '95 V' },
    ),
    time: fact(amount('time', { min: 0, max: 1e5 }), 'Time from the beginning to the end.', {
      from: 'draft',
      when: kindIs('precharge', 'discharge'),
      onBoat: true,
      example: '1.2 s',
    }),
    turns: fact(
      choice(['clockwise', 'counter-clockwise']),
      'How the motor turned with ahead commanded, seen facing its drive end.',
      { from: 'draft', when: kindIs('rotation'), onBoat: true, example: 'clockwise' },
    ),
    coupled: fact(yesNo, 'Whether the shaft was coupled to the motor.', {
      from: 'draft',
      when: kindIs('rotation'),
      onBoat: true,
      example: 'no',
    }),
    current: fact(amount('current', { min: 0, max: 1000 }), 'Current to earth.', {
      from: 'draft',
      when: kindIs('earth-leakage'),
      or: 'resistance',
      onBoat: true,
      example: '0.4 mA',
    }),
    'run-out': fact(
      amount('length', { min: 0, max: 0.05 }),
      'Difference between the highest and the lowest reading of the dial in one turn.',
      { from: 'draft', when: kindIs('run-out'), onBoat: true, example: '0.03 mm' },
    ),
    where: fact(
      choice(['shaft', 'face', 'register']),
      'Whether the dial was on the shaft end, the face or the register of the flange.',
      { from: 'draft', when: kindIs('run-out'), onBoat: true, example: 'shaft' },
    ),
    diameter: fact(
      amount('length', { min: 1e-3, max: 2 }),
      'Diameter of the shaft end or the register. The limits of the standards follow from it.',
      { example: '38 mm' },
    ),
    permitted: fact(
      permitted([
        ['ratio', 1],
        ['resistance', 1e13],
        ['current', 1000],
        ['length', 0.05],
        ['time', 1e5],
      ]),
      'What is permitted: `max 5 %` of imbalance, `max 0.05 mm` of run-out, `min 1 Mohm`. It replaces the limit of a standard.',
      { example: 'max 5 %' },
    ),
    by: fact(text, 'Who tested it.', { from: 'as-built', example: '"electrician (invented)"' }),
    instrument: fact(text, 'Name and number of the instrument.', {
      from: 'as-built',
      example: '"tester 4417"',
    }),
    witness: fact(text, 'Who witnessed it.', { example: '"surveyor (invented)"' }),
    note: fact(text, 'Anything the next reader should know.', { example: '"controller disconnected"' }),
  },
  example: `test insulation-1 {
  kind:        insulation-resistance
  on:          propulsion
  taken:       2026-03-12
  voltage:     500 V
  resistance:  180 Mohm
  temperature: 18 degC
}`,
})
