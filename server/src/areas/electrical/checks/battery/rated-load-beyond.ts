import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatLoading } from '../../../common/amperes.ts'
import { headOf } from '../../../common/battery-string.ts'
import { caseFlows } from '../../plans/load-cases.ts'

const job = (amps: string) => `battery house {
  nominal: 96 V
  window: 84..108 V
  current: ${amps}
}
drive main {
  motor m { power: 15 kW  efficiency: 92 % }
  controller c { input: 72..120 V  efficiency: 96 % }
  cable feed { from: house  to: c  conductor: 95 mm2  length: 2 m  insulation: 105 degC }
}`

export default check({
  id: 'battery/rated-load-beyond',
  severity: 'warning',
  title: 'All at rated power take more than the battery permits',
  why: 'With every drive and load at rated power the battery gets too hot, or its management system switches it off. Whether the boat ever asks for so much follows from hull and propeller; the motors are able to.',
  source: theJobFile('the current stated at the battery'),
  on: 'battery',
  needs: { most: 'battery.current' },
  fires: job('150 A').replace('150 A', '150 A\n#          ^^^^^ rated power'),
  quiet: job('250 A'),
  run: ({ most }, lookup) => {
    const head = headOf(lookup.block, lookup)
    const given = caseFlows('rated', head, lookup.from(head))[0]?.amps
    if (given === undefined || reaches(most.value, given)) return []
    const { current, carries } = formatLoading(given, most.value)
    return [
      at(most, {
        message: `The battery permits ${carries}, but with all at rated power it gives ${current}.`,
        detail:
          'The network with all drives and loads at rated power, all batteries on at the low end of their window.',
        todo: 'Choose a battery that permits more, add one, or limit the power in the controllers.',
        found: current,
        limit: `at most ${carries}`,
      }),
    ]
  },
})
