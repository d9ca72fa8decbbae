import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { factOf } from '../../../../job/model.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { ratedFor, throughPart } from '../../plans/through-current.ts'

const job = (amps: string) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { rating: 315 A  in: feed  at: 100 mm }
  isolator main-switch {
    in: feed
    at: 300 mm
    current: ${amps}
  }
}`

export default check({
  id: 'switch/overloaded',
  severity: 'error',
  title: 'Switch or busbar rated below its current',
  why: 'It gets hot whenever the drives run at full power, and the fuse before it does not open.',
  source: commonPractice(
    'rated current of each part at least the continuous current through it; of a busbar at least its diversity times the sum of its branches',
  ),
  on: ['isolator', 'contactor', 'busbar'],
  fires: job('100 A').replace('100 A', '100 A\n#            ^^^^^ carries'),
  quiet: job('250 A'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const rated = ratedFor(block, 'current')
    const through = throughPart(block, lookup)
    if (!rated || through === undefined || reaches(rated.value, through)) return []
    const diversity = factOf(block, 'busbar.diversity')?.value
    const [found, limit] = [formatCarried(rated.value), formatLoad(through)]
    return [
      at(rated, {
        message: `It is rated for ${found} but carries ${limit}.`,
        ...(diversity !== undefined && {
          detail: `Its branches count with its \`diversity\` of ${formatShare(diversity, 3)}; a single branch, a stated \`design-current\` and charging count in full.`,
        }),
        todo: 'Choose one that is rated for this current, or check the current of its cables.',
        found,
        limit: `at least ${limit}`,
      }),
    ]
  },
})
