import { atHead, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { supplyOf } from '../../plans/supply.ts'

const job = (length: string) => `battery house { nominal: 96 V  window: 84..108 V }
busbar bus { current: 600 A }
cable lead { from: house  to: bus  conductor: 35 mm2  length: ${length}  insulation: 105 degC }
drive main {
  load winch { power: 8 kW }
  cable to-winch { from: bus  to: winch  conductor: 35 mm2  length: 12 m  insulation: 105 degC }
}`

export default check({
  id: 'supply/drop',
  severity: 'warning',
  title: 'Voltage drop on the way above the limit',
  why: 'Each cable on the way may be within its limit, and the sum not. All that is lost is missing at the load and heats the boat.',
  source: commonPractice(
    '3 % for propulsion feeders, from the battery to the load and back, no source; nodal analysis',
  ),
  on: ['controller', 'load', 'converter'],
  fires: job('12 m').replace('8 kW }', '8 kW }\n# ^^^^^^^^^^ lost on the way'),
  quiet: job('1 m'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const supply = supplyOf(block, lookup)
    if (supply?.limit === undefined || reaches(supply.limit, supply.drop)) return []
    const [found, limit] = [formatShare(supply.drop, 3), formatShare(supply.limit, 3)]
    return [
      atHead(block, {
        message: `With all at rated power ${found} is lost on the way from the battery; ${limit} is allowed.`,
        detail: `It is fed with ${formatSi(supply.volts, 'voltage', 'metric', 3)}. Limit: ${supply.limitFrom}.`,
        todo: 'Use larger conductors in the cables on the way, or shorten them. Or state what is allowed as `drop` of the cable that ends here.',
        found,
        limit: `at most ${limit}`,
      }),
    ]
  },
})
