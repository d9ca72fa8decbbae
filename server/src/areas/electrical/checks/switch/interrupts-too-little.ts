import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { factOf } from '../../../../job/model.ts'
import { formatCarried, formatLoad } from '../../../common/amperes.ts'
import { throughPart } from '../../plans/through-current.ts'

const job = (amps: string) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { rating: 315 A  in: feed  at: 100 mm }
  isolator main-switch {
    in: feed
    at: 300 mm
    current: 300 A
    interrupts: ${amps}
  }
}`

export default check({
  id: 'switch/interrupts-too-little',
  severity: 'error',
  title: 'Switch that cannot break its own current',
  why: 'In an emergency it is opened under load. A direct current does not pass through zero: beyond what a switch can break, its arc goes on burning.',
  source: commonPractice(
    'what a switch can break at least the continuous current through it: common practice, no source',
  ),
  on: ['isolator', 'contactor'],
  fires: job('100 A').replace('100 A', '100 A\n#               ^^^^^ break 100 A'),
  quiet: job('250 A'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const interrupts = factOf(block, 'isolator.interrupts') ?? factOf(block, 'contactor.interrupts')
    const through = interrupts && throughPart(block, lookup)
    if (!interrupts || through === undefined || reaches(interrupts.value, through)) return []
    const [found, limit] = [formatCarried(interrupts.value), formatLoad(through)]
    return [
      at(interrupts, {
        message: `It can break ${found} but carries ${limit}.`,
        todo: 'Choose one that can break this current in DC, at the voltage of the circuit.',
        found,
        limit: `at least ${limit}`,
      }),
    ]
  },
})
