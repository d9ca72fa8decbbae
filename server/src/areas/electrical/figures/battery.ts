import { commonPractice } from '../../../checks/check.ts'
import { nameOfString, stringOf } from '../../common/battery-string.ts'
import { figureWhereKnown } from '../../common/figure.ts'
import { chargedAsUsual, isHighStated } from '../../common/string-facts.ts'
import { bankShortCircuit } from '../plans/bank-fault.ts'
import { highestOfBank } from '../plans/banks-around.ts'
import { shortCircuitSource } from '../short-circuit.ts'

const highestVoltage = figureWhereKnown({
  id: 'battery/highest-voltage',
  on: 'battery',
  title: 'Highest voltage',
  kind: 'voltage',
  doc: 'The highest voltage of the battery, as it is on charge; of one in series, that of its string.',
  unknown: 'Its voltage is not stated, or cannot be used as written.',
  formula: 'high end of the window; where none is stated, 1.25 × nominal voltage. In series: the sum.',
  source: commonPractice(
    'the window as stated; else 2.5 V for each lead-acid cell of 2 V when equalising (common practice, no source)',
  ),
  from: (battery, lookup) => {
    const volts = highestOfBank(battery, lookup)
    if (volts === undefined) return undefined
    const string = stringOf(battery, lookup)
    return {
      volts,
      isStated: isHighStated(string),
      ...(string.length > 1 && { string: nameOfString(string) }),
    }
  },
  of: (found) => ({
    value: found.volts,
    ...(found.string && { from: `${found.string} in series` }),
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
  doc: 'The current of a short circuit at the terminals of the battery; of one in series, at those of its string. Of two figures that the job gives, the higher one.',
  unknown:
    'Its short-circuit current, or its internal resistance and voltage, are not stated or cannot be used as written.',
  formula:
    'as stated, or highest voltage / internal resistance, whichever is higher. In series: sum of the voltages / sum of the resistances; a battery that states only its short-circuit current has its voltage / that current.',
  source: shortCircuitSource,
  from: bankShortCircuit,
  of: ({ highest, from, assumptions }) => ({ value: highest, from, assumptions }),
})

export const batteryFigures = [highestVoltage, shortCircuitCurrent]
