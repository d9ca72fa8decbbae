import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { elide } from '../../../../quantity/elide.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { nameOfString, stringOf } from '../../../common/battery-string.ts'
import { endsOf } from '../../plans/cable-circuit.ts'
import { suppliesOfCable } from '../../plans/controller-supply.ts'

const job = (voltage: string) => `battery house { nominal: 48 V  window: 42..54 V }
load lights { power: 100 W  voltage: ${voltage} }
drive main {
  cable feed {
    from: house
    to: lights
    conductor: 4 mm2
    length: 2 m
    insulation: 105 degC
  }
}`

/** Part by which the voltage that a load is made for may be beyond what a battery has: a load for 12 V runs on 12.8 V to 14.6 V. */
const slack = 1.25

export default check({
  id: 'supply/other-voltage',
  severity: 'error',
  title: 'Load on a battery of another voltage',
  why: 'A load for a lower voltage overheats or burns. One for a higher voltage does not run, or draws more current than its cable is sized for.',
  source: commonPractice('25 % beyond the window of the battery (common practice, no source)'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  fires: job('12 V').replace('cable feed {', 'cable feed {\n# ^^^^^^^^^^ 12 V'),
  quiet: job('48 V'),
  run: (_facts, lookup) => {
    const { block: cable } = lookup
    const load = endsOf(cable, lookup).find((end) => end?.kind === 'load')
    const voltage = load && factOf(load, 'load.voltage')
    if (!voltage) return []
    return suppliesOfCable(cable, lookup)
      .filter(({ low, high }) => voltage.value * slack < low || voltage.value > high * slack)
      .map(({ battery, low, high }) => {
        const found = formatSi(voltage.value, 'voltage')
        const [lowest, highest] = [formatSi(low, 'voltage'), formatSi(high, 'voltage')]
        const limit = low === high ? lowest : `${lowest} to ${highest}`
        return atHead(cable, {
          message: `The load is for ${found}, but ${elide(nameOfString(stringOf(battery, lookup)))} has ${limit}.`,
          todo: 'Choose a load for the voltage of the battery, or feed it from a converter.',
          found,
          limit,
          related: [{ at: voltage.at, message: 'the voltage of the load' }],
        })
      })
  },
})
