import { theJobFile } from '../../../checks/check.ts'
import { factOf } from '../../../job/model.ts'
import { figure, figureWhereKnown } from '../../common/figure.ts'
import { drawnFrom } from '../plans/drawn.ts'
import { gearLoad } from '../plans/gear-load.ts'
import { serviceEnergy, serviceRange } from '../plans/service-energy.ts'
import { energyBalance } from '../sources.ts'

const current = figure({
  id: 'battery/drive-current',
  on: 'battery',
  title: 'Current of the drives',
  kind: 'current',
  doc: 'The most that the drives take continuously, at the lowest voltage of the bank: at bollard, at top speed or at a point of the service.',
  formula: 'motor power / (η motor η controller) / lowest voltage; shared among batteries by their capacity.',
  source: energyBalance,
  from: drawnFrom,
  of: ({ current: value, volts, where, assumptions }, { block, show }) => {
    const most = factOf(block, 'battery.current')?.value
    return {
      value,
      ...(most !== undefined && { limit: { high: most }, limitFrom: 'as stated' }),
      from: `${where}, at ${show(volts, 'voltage')}`,
      assumptions,
    }
  },
})

const rate = figure({
  id: 'battery/c-rate',
  on: 'battery',
  title: 'Discharge rate (C)',
  kind: 'ratio',
  doc: 'That current to the capacity: 1 empties the whole capacity in an hour.',
  formula: 'current / (capacity / 1 h).',
  source: energyBalance,
  from: drawnFrom,
  of: ({ rate: value, assumptions }) => ({ value, assumptions }),
})

const gearTorque = figureWhereKnown({
  id: 'gear/torque',
  on: 'gear',
  title: 'Torque of the motor',
  kind: 'torque',
  doc: 'The most that the motor gives continuously, at the motor side of the gear.',
  source: theJobFile('rated power and speed, or the torque-curve, of the motor'),
  from: gearLoad,
  of: ({ torque }, { block }) => {
    const most = factOf(block, 'gear.rated-torque')?.value
    return { value: torque, ...(most !== undefined && { limit: { high: most }, limitFrom: 'as stated' }) }
  },
})

const energyUsed = figure({
  id: 'service/energy-used',
  on: 'service',
  title: 'Energy of the service',
  kind: 'ratio',
  unit: '%',
  doc: 'What all points take of what may be used, the reserve kept.',
  formula: 'sum of time / endurance at each point.',
  source: energyBalance,
  from: serviceEnergy,
  of: ({ share, assumptions }) => ({
    value: share,
    limit: { high: 1 },
    limitFrom: 'what the bank has',
    assumptions,
  }),
})

const range = figure({
  id: 'service/range',
  on: 'service',
  title: 'Range',
  kind: 'length',
  unit: 'nmi',
  doc: 'How far the boat gets on one charge at the speed of the point that takes the longest time, the reserve kept.',
  formula: 'endurance × boat speed.',
  source: energyBalance,
  from: serviceRange,
  of: ({ range: value, point, assumptions }, { block }) => {
    const wanted = factOf(block, 'service.range')?.value
    return {
      value,
      ...(wanted && { limit: wanted, limitFrom: 'as stated' }),
      from: `at the speed of ${point}`,
      assumptions,
    }
  },
})

export const serviceFigures = [energyUsed, range]

export const otherFigures = [current, rate, gearTorque, ...serviceFigures]
