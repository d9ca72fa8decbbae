import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { chargedAsUsual, onCharge } from '../../../common/string-facts.ts'
import { highestOf } from '../../plans/cable-protection.ts'
import { aCableAt, ratedFor } from '../../plans/through-current.ts'

const job = (volts: string) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { rating: 315 A  in: feed  at: 100 mm }
  isolator main-switch {
    in: feed
    at: 300 mm
    voltage: ${volts}
  }
}`

export default check({
  id: 'switch/voltage-below',
  severity: 'error',
  title: 'Switch or busbar rated below the voltage',
  why: 'Above its rated voltage a switch may not put out the arc when it opens, and distances between bare parts are too short.',
  source: commonPractice('rated voltage of each part at least the highest voltage of its circuit'),
  on: ['isolator', 'contactor', 'busbar'],
  fires: job('60 V').replace('60 V', '60 V\n#            ^^^^ reaches 108 V'),
  quiet: job('150 V'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const rated = ratedFor(block, 'voltage')
    const cable = aCableAt(block, lookup)
    const highest = cable && highestOf(cable, lookup.from(cable), onCharge)
    if (!rated || !cable || highest === undefined || reaches(rated.value, highest)) return []
    const [found, limit] = [formatSi(rated.value, 'voltage'), formatSi(highest, 'voltage')]
    return [
      at(rated, {
        message: `The rated voltage is ${found}; the circuit reaches ${limit}.`,
        todo: 'Choose one rated for this voltage in DC.',
        found,
        limit: `at least ${limit}`,
        ...(highestOf(cable, lookup.from(cable)) !== highest && { assumptions: [chargedAsUsual] }),
      }),
    ]
  },
})
