import { published, type Source } from '../../checks/check.ts'
import { figure, figureWhereKnown } from '../common/figure.ts'
import { chargeOf, dischargeOf } from '../electrical/plans/controller-charge.ts'
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

const discharge = figureWhereKnown({
  id: 'caution/discharge-time',
  on: 'controller',
  title: 'Time until its charge may be touched',
  kind: 'time',
  doc: 'How long its discharge resistance takes from the highest voltage of its batteries to the voltage that dry skin may touch, 60 V DC, and to that for wet skin, 30 V DC. A discharge resistance can fail: prove it dead all the same.',
  formula: 'resistance × capacitance × ln(voltage / voltage that may be touched).',
  source: {
    basis: 'from memory',
    text: 'RC discharge, any text on circuits; dry places 60 V DC, IEC 61140 (from memory); wet places 30 V DC, IEC 60598-1:2008, 8.2.3',
  },
  keys: ['skin'],
  from: dischargeOf,
  of: ({ dry, wet, isLeast, assumptions }) =>
    (['dry', 'wet'] as const).map((skin) => ({
      key: { skin },
      value: skin === 'dry' ? dry : wet,
      ...(isLeast && { bound: 'at-least' as const }),
      assumptions,
    })),
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

export const figures = [storedEnergy, discharge, shaftMass]
