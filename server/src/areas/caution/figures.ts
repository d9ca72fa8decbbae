import { published, type Source } from '../../checks/check.ts'
import { figure, figureWhereKnown } from '../common/figure.ts'
import { chargeOf } from './plans/controller-charge.ts'
import { heaviestMass } from './plans/shaft-mass.ts'

const bronze: Source = { basis: 'from memory', text: 'density of bronze, 8900 kg/m³ (from memory)' }

const storedEnergy = figure({
  id: 'caution/stored-energy',
  on: 'controller',
  title: 'Stored energy',
  kind: 'energy',
  unit: 'J',
  doc: 'The energy in the capacitors of the controller after it is switched off.',
  formula: 'capacitance × voltage² / 2, at the highest voltage of its batteries.',
  source: published('definition of capacitance'),
  from: chargeOf,
  of: ({ energy, isLeast, assumptions }) => ({
    value: energy,
    ...(isLeast && { bound: 'at-least' as const }),
    assumptions,
  }),
})

const shaftMass = figureWhereKnown({
  id: 'caution/shaft-mass',
  on: 'shaft',
  title: 'Mass',
  unknown: 'Its diameter or length is not stated, or cannot be used as written.',
  kind: 'mass',
  doc: 'The most that the shaft can weigh.',
  formula: 'volume of a solid bar × density of bronze.',
  source: bronze,
  from: heaviestMass,
  of: (mass) => ({ value: mass, assumptions: ['the shaft is solid, of bronze'] }),
})

export const figures = [storedEnergy, shaftMass]
