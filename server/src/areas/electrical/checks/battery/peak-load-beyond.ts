import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { factOf } from '../../../../job/model.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatLoading } from '../../../common/amperes.ts'
import { headOf } from '../../../common/battery-string.ts'
import { caseFlows } from '../../plans/load-cases.ts'

const job = (amps: string, time = '60 s') => `battery house {
  nominal: 96 V
  window: 84..108 V
  current: 210 A
  peak-current: ${amps}
  peak-time: ${time}
}
drive main {
  motor m {
    power: 15 kW
    speed: 1500 rpm
    peak-torque: 150 N·m
    peak-time: 60 s
    efficiency: 92 %
  }
  controller c { input: 72..120 V  efficiency: 96 % }
  cable feed { from: house  to: c  conductor: 95 mm2  length: 2 m  insulation: 105 degC }
}`

export default check({
  id: 'battery/peak-load-beyond',
  severity: 'warning',
  title: 'Motors at peak torque take more than the battery permits',
  why: 'The management system of a battery switches it off at too high a current: the boat loses all drives at once, while somebody gives full torque to stop it.',
  source: theJobFile('the peak current stated at the battery, and how long it may last'),
  on: 'battery',
  needs: { peak: 'battery.peak-current' },
  fires: job('280 A').replace('280 A', '280 A\n#               ^^^^^ peak torque'),
  quiet: job('320 A'),
  run: ({ peak }, lookup) => {
    const head = headOf(lookup.block, lookup)
    const [flow] = caseFlows('peak', head, lookup.from(head))
    if (flow?.amps === undefined) return []
    const time = factOf(lookup.block, 'battery.peak-time')
    const continuous = factOf(lookup.block, 'battery.current')?.value ?? 0
    const { current, carries } = formatLoading(flow.amps, peak.value)
    const detail =
      'The network with the motors at peak torque and rated speed, all else at rated power. A limit of the input current in a controller counts.'
    const todo = 'Choose a battery that permits more, or limit the input current in the controllers.'
    if (!reaches(peak.value, flow.amps))
      return [
        at(peak, {
          message: `The battery permits ${carries}, but with the motors at peak torque it gives ${current}.`,
          detail,
          todo,
          found: current,
          limit: `at most ${carries}`,
        }),
      ]
    if (
      !time ||
      flow.lasts === undefined ||
      reaches(time.value, flow.lasts) ||
      reaches(continuous, flow.amps)
    )
      return []
    const [lasts, most] = [formatSi(flow.lasts, 'time'), formatSi(time.value, 'time')]
    return [
      at(time, {
        message: `The battery permits its peak for ${most}; the motors may take ${current} for ${lasts}.`,
        detail,
        todo: 'Choose a battery that permits it for longer, or limit the peak in the controllers.',
        found: lasts,
        limit: `at most ${most}`,
      }),
    ]
  },
})
