import { type Amount, figure } from '../../common/figure.ts'
import { topOf } from '../plans/at-block.ts'
import { energyPlan, powerPlan } from '../plans/whole-boat.ts'
import { balance, energyBalance } from '../sources.ts'

const over = { title: 'Boat speed', kind: 'speed' } as const

const topSpeed = figure({
  id: 'hull/top-speed',
  on: 'hull',
  title: 'Top speed',
  kind: 'speed',
  doc: 'The highest speed that all drives together hold continuously, with the sea margin.',
  formula: 'T (1 − t) N = R (1 + margin) where the motor of a drive has no more to give.',
  source: balance,
  from: topOf,
  of: ({ top, assumptions }) => ({
    value: top.boatSpeed,
    ...(top.bound && { bound: top.bound }),
    ...(top.bound && {
      from:
        top.bound === 'at-least'
          ? 'the resistance is not known at a higher speed'
          : 'the drives cannot hold the lowest speed that the resistance is known for',
    }),
    assumptions,
  }),
})

const resistance = figure({
  id: 'hull/resistance',
  on: 'hull',
  title: 'Resistance',
  kind: 'force',
  over,
  doc: 'Resistance of the hull with the sea margin.',
  formula:
    'by the points stated; or ½ ρ S V² (1 + k) CF + wave resistance; or 0.6 of the power of the displacement rule / V.',
  source: balance,
  from: powerPlan,
  of: ({ table, assumptions }) =>
    table.rows.map(({ boatSpeed, resistance: value }): Amount => ({ value, at: boatSpeed, assumptions })),
})

const motorPower = figure({
  id: 'hull/motor-power',
  on: 'hull',
  title: 'Motor power',
  kind: 'power',
  over,
  keys: ['drive'],
  doc: 'Power at the shaft of the motor of each drive.',
  formula: 'T = R (1 + margin) / (N (1 − t)); Va = V (1 − w); P = 2π n Q / (η gear η shaft).',
  source: balance,
  from: powerPlan,
  of: ({ table, drives, assumptions }, { blockOf }) =>
    table.rows.flatMap(({ boatSpeed, drives: states }) =>
      states.map((state, i): Amount => {
        const drive = drives[i]
        return {
          value: state.motorPower,
          at: boatSpeed,
          key: { drive: (drive && blockOf(drive).name) ?? '' },
          assumptions,
        }
      }),
    ),
})

const ofEnergy = { on: 'hull', over, source: energyBalance, from: energyPlan } as const

const bankPower = figure({
  ...ofEnergy,
  id: 'hull/battery-power',
  title: 'Battery power',
  kind: 'power',
  doc: 'Power from all banks together.',
  formula: 'sum of motor power / (η motor η controller) + sum of other loads · duty / η converter.',
  of: ({ rows, assumptions }) =>
    rows.map(({ boatSpeed, power }): Amount => ({ value: power, at: boatSpeed, assumptions })),
})

const endurance = figure({
  ...ofEnergy,
  id: 'hull/endurance',
  title: 'Endurance',
  kind: 'time',
  unit: 'h',
  doc: 'Time until the first bank is down to the reserve.',
  formula: 'usable energy (1 − reserve) / power; lead: H (C / (I H))^k usable (1 − reserve).',
  of: ({ rows, assumptions }) =>
    rows.map(({ boatSpeed, endurance: value }): Amount => ({ value, at: boatSpeed, assumptions })),
})

const range = figure({
  ...ofEnergy,
  id: 'hull/range',
  title: 'Range',
  kind: 'length',
  unit: 'nmi',
  doc: 'How far the boat goes in that time, through the water.',
  formula: 'endurance × boat speed.',
  of: ({ rows, assumptions }) =>
    rows.map(({ boatSpeed, range: value }): Amount => ({ value, at: boatSpeed, assumptions })),
})

export const hullFigures = [topSpeed, resistance, motorPower, bankPower, endurance, range]
