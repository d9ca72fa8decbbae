import { commonPractice } from '../../../checks/check.ts'
import { factOf } from '../../../job/model.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { bankShortCircuit } from '../plans/bank-fault.ts'
import { highestOfBank } from '../plans/banks-around.ts'
import { chargedAsUsual } from '../plans/cable-protection.ts'
import { shortCircuitSource } from '../short-circuit.ts'

const highestVoltage = figureWhereKnown({
  id: 'battery/highest-voltage',
  on: 'battery',
  title: 'Highest voltage',
  kind: 'voltage',
  doc: 'The highest voltage of the bank, as it is on charge.',
  unknown: 'Its voltage is not stated, or cannot be used as written.',
  formula: 'high end of the window; where none is stated, 1.25 × nominal voltage.',
  source: commonPractice(
    'the window as stated; else 2.5 V for each lead-acid cell of 2 V when equalising (common practice, no source)',
  ),
  from: (battery) => {
    const volts = highestOfBank(battery)
    return volts === undefined
      ? undefined
      : { volts, isStated: factOf(battery, 'battery.window')?.value.high !== undefined }
  },
  of: (found) => ({
    value: found.volts,
    ...(!found.isStated && {
      assumptions: [chargedAsUsual],
    }),
  }),
})

const shortCircuitCurrent = figureWhereKnown({
  id: 'battery/short-circuit-current',
  on: 'battery',
  title: 'Short-circuit current',
  kind: 'current',
  doc: 'The current of a short circuit at the terminals of the bank. Of two figures that the job gives, the higher one.',
  unknown:
    'Its short-circuit current, or its internal resistance and voltage, are not stated or cannot be used as written.',
  formula: 'as stated, or highest voltage / internal resistance, whichever is higher.',
  source: shortCircuitSource,
  from: bankShortCircuit,
  of: ({ highest, from, assumptions }) => ({ value: highest, from, assumptions }),
})

export const batteryFigures = [highestVoltage, shortCircuitCurrent]
