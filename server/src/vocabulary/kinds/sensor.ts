import { block, fact } from '../block.ts'
import { amount, choice } from '../shape.ts'
import { kelvins } from '../shapes/kelvins.ts'
import { points } from '../shapes/points.ts'

/** The types that a controller can read, and a winding can have. */
export const sensorKinds = ['pt100', 'pt1000', 'ntc', 'kty84-130', 'ptc'] as const

const zero = 273.15
const working = { min: zero - 60, max: zero + 300 }
const temperature = {
  kind: 'temperature',
  limits: { min: zero - 200, max: zero + 850 },
  words: 'temperature',
} as const

export const sensor = block({
  kind: 'sensor',
  doc: 'A temperature sensor, and what is done at the temperatures it reads.',
  heading: 'name',
  within: ['motor', 'controller', 'battery'],
  many: true,
  facts: {
    kind: fact(
      choice(sensorKinds),
      'Platinum of 100 or 1000 ohm at 0 °C (IEC 60751), a thermistor (`ntc`), silicon, or a trip thermistor (`ptc`, DIN 44081). A trip thermistor reads no temperature: it switches at one.',
      { from: 'for-review', example: 'pt1000' },
    ),
    'tolerance-class': fact(
      choice(['AA', 'A', 'B', 'C']),
      'Tolerance class of a platinum sensor, IEC 60751. If not stated, B.',
      { example: 'B' },
    ),
    r25: fact(amount('resistance', { min: 1, max: 1e7 }), 'Resistance of a thermistor at 25 °C.', {
      from: 'issued',
      when: { fact: 'kind', is: 'ntc' },
      or: 'curve',
      example: '10 kohm',
    }),
    beta: fact(kelvins({ min: 500, max: 10_000 }), 'Constant B of a thermistor, in kelvin.', {
      from: 'issued',
      when: { fact: 'kind', is: 'ntc' },
      or: 'curve',
      example: '3380 K',
    }),
    curve: fact(
      points(temperature, {
        kind: 'resistance',
        limits: { min: 0.1, max: 1e8 },
        words: 'resistance',
      }),
      'Resistance over temperature, from the data sheet. It replaces what the kind gives. Between two points the logarithm of the resistance goes along 1/T, as that of a thermistor does. It is never read beyond its ends.',
      { example: '25 degC 10 kohm, 100 degC 1.02 kohm, 150 degC 370 ohm' },
    ),
    'switches-at': fact(amount('temperature', working), 'Temperature at which a trip thermistor switches.', {
      from: 'issued',
      when: { fact: 'kind', is: 'ptc' },
      example: '145 degC',
    }),
    warning: fact(amount('temperature', working), 'Temperature of the warning.', {
      from: 'issued',
      or: 'switches-at',
      example: '130 degC',
    }),
    derating: fact(
      points(temperature, { kind: 'ratio', limits: { min: 0, max: 1 }, words: 'share' }),
      'Share of the rated current that the controller still permits, over temperature.',
      { example: '130 degC 100 %, 150 degC 0 %' },
    ),
    trip: fact(amount('temperature', working), 'Temperature at which the controller switches off.', {
      from: 'issued',
      or: 'switches-at',
      example: '150 degC',
    }),
    'lead-resistance': fact(
      amount('resistance', { min: 0, max: 1000 }),
      'Resistance of both leads together, where two wires lead to the sensor. The controller reads it as heat.',
      { example: '0.4 ohm' },
    ),
  },
  example: `sensor winding { kind: pt1000  warning: 130 degC  trip: 150 degC }`,
})
