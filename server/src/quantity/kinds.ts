import { type Dimension, dimension, dimensionless } from './dimension.ts'

export type UnitSystem = 'metric' | 'inch'

interface KindRow {
  /** With its article, as it stands in a message: "a length was expected". */
  readonly words: string
  readonly dimension: Dimension
  /** The unit offered when one is missing, and the one results are shown in, by unit system. */
  readonly shown: Readonly<Record<UnitSystem, string>>
}

const row = (words: string, of: Dimension, metric: string, inch = metric): KindRow => ({
  words,
  dimension: of,
  shown: { metric, inch },
})

/** What a quantity is of. Two kinds may share a dimension in the SI; here each is its own. */
export const kinds = {
  ratio: row('a plain number', dimensionless, ''),
  length: row('a length', dimension({ m: 1 }), 'mm', 'in'),
  area: row('an area', dimension({ m: 2 }), 'mm2', 'in2'),
  mass: row('a mass', dimension({ kg: 1 }), 'kg', 'lb'),
  time: row('a time', dimension({ s: 1 }), 's'),
  angle: row('an angle', dimension({ rad: 1 }), 'deg'),
  'rotational speed': row('a rotational speed', dimension({ rad: 1, s: -1 }), 'rpm'),
  frequency: row('a frequency', dimension({ s: -1 }), 'Hz'),
  speed: row('a speed', dimension({ m: 1, s: -1 }), 'kn'),
  force: row('a force', dimension({ m: 1, kg: 1, s: -2 }), 'N', 'lbf'),
  torque: row('a torque', dimension({ m: 2, kg: 1, s: -2, rad: -1 }), 'N·m', 'lbf·ft'),
  energy: row('an energy', dimension({ m: 2, kg: 1, s: -2 }), 'kWh'),
  power: row('a power', dimension({ m: 2, kg: 1, s: -3 }), 'kW', 'hp'),
  pressure: row('a pressure or stress', dimension({ m: -1, kg: 1, s: -2 }), 'MPa', 'psi'),
  density: row('a density', dimension({ m: -3, kg: 1 }), 'kg/m3'),
  voltage: row('a voltage', dimension({ m: 2, kg: 1, s: -3, A: -1 }), 'V'),
  current: row('a current', dimension({ A: 1 }), 'A'),
  resistance: row('a resistance', dimension({ m: 2, kg: 1, s: -3, A: -2 }), 'ohm'),
  capacitance: row('a capacitance', dimension({ m: -2, kg: -1, s: 4, A: 2 }), 'mF'),
  charge: row('a charge', dimension({ s: 1, A: 1 }), 'Ah'),
  temperature: row('a temperature', dimension({ K: 1 }), 'degC'),
} as const satisfies Record<string, KindRow>

export type Kind = keyof typeof kinds
