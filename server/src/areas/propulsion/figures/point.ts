import type { DriveState } from '../../../engineering/propulsion/power-table.ts'
import { type Amount, figure } from '../../common/figure.ts'
import { atPoint, demandAtPoint } from '../plans/at-block.ts'
import { motorAtPoint } from '../plans/motor-at-point.ts'
import { balance, energyBalance } from '../sources.ts'

const keys = ['drive'] as const

interface EachDrive {
  readonly id: string
  readonly title: string
  readonly kind: 'rotational speed' | 'ratio'
  readonly unit?: string
  readonly doc: string
  readonly formula: string
  readonly of: (state: DriveState) => number
}

const eachDrive = ({ of, ...declared }: EachDrive) =>
  figure({
    ...declared,
    on: 'point',
    keys,
    source: balance,
    from: atPoint,
    of: ({ row, names, assumptions }) =>
      row.drives.map(
        (state, i): Amount => ({ value: of(state), key: { drive: names[i] ?? '' }, assumptions }),
      ),
  })

const propellerSpeed = eachDrive({
  id: 'point/propeller-speed',
  title: 'Propeller speed',
  kind: 'rotational speed',
  doc: 'How fast the propeller turns at this speed of the boat.',
  formula: 'the n at which KT ρ n² D⁴ (1 − t) N = R (1 + margin).',
  of: ({ speed }) => speed,
})

const efficiency = eachDrive({
  id: 'point/propeller-efficiency',
  title: 'Propeller efficiency',
  kind: 'ratio',
  unit: '%',
  doc: 'Of the propeller alone, in open water.',
  formula: 'η0 = J KT / (2π KQ).',
  of: (state) => state.efficiency,
})

const slip = eachDrive({
  id: 'point/slip',
  title: 'Slip',
  kind: 'ratio',
  unit: '%',
  doc: 'Apparent slip, against the speed of the boat.',
  formula: '1 − V / (P n).',
  of: (state) => state.slip,
})

const motorSpeed = figure({
  id: 'point/motor-speed',
  on: 'point',
  title: 'Motor speed',
  kind: 'rotational speed',
  keys,
  doc: 'How fast the motor must turn, against its highest speed.',
  formula: 'propeller speed × gear ratio.',
  source: balance,
  from: motorAtPoint,
  of: ({ motors, assumptions }) =>
    motors.map(
      ({ name, speed, maxSpeed }): Amount => ({
        value: speed,
        key: { drive: name },
        ...(maxSpeed !== undefined && { limit: { high: maxSpeed }, limitFrom: 'the motor' }),
        assumptions,
      }),
    ),
})

const motorTorque = figure({
  id: 'point/motor-torque',
  on: 'point',
  title: 'Motor torque',
  kind: 'torque',
  keys,
  doc: 'Torque that the motor must give, against what it can give continuously at this speed.',
  formula: 'Q / (ratio × η gear × η shaft).',
  source: balance,
  from: motorAtPoint,
  of: ({ motors, assumptions }) =>
    motors.map(
      ({ name, torque, maxTorque }): Amount => ({
        value: torque,
        key: { drive: name },
        ...(maxTorque !== undefined && { limit: { high: maxTorque }, limitFrom: 'the motor' }),
        assumptions,
      }),
    ),
})

const batteryPower = figure({
  id: 'point/battery-power',
  on: 'point',
  title: 'Battery power',
  kind: 'power',
  doc: 'Power from all banks together.',
  formula: 'sum of motor power / (η motor η controller) + sum of other loads · duty / η converter.',
  source: energyBalance,
  from: demandAtPoint,
  of: ({ demand, assumptions }) => ({ value: demand.power, assumptions }),
})

const endurance = figure({
  id: 'point/endurance',
  on: 'point',
  title: 'Endurance',
  kind: 'time',
  unit: 'h',
  doc: 'Time at this speed alone until the first bank is down to the reserve.',
  formula: 'usable energy (1 − reserve) / power; lead: H (C / (I H))^k usable (1 − reserve).',
  source: energyBalance,
  from: demandAtPoint,
  of: ({ demand, assumptions }) => ({ value: demand.endurance, assumptions }),
})

const range = figure({
  id: 'point/range',
  on: 'point',
  title: 'Range',
  kind: 'length',
  unit: 'nmi',
  doc: 'How far the boat goes in that time, through the water.',
  formula: 'endurance × boat speed.',
  source: energyBalance,
  from: demandAtPoint,
  of: ({ demand, assumptions }) => ({ value: demand.range, assumptions }),
})

export const pointFigures = [
  propellerSpeed,
  motorSpeed,
  motorTorque,
  efficiency,
  slip,
  batteryPower,
  endurance,
  range,
]
