import { atHead, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { caseFlows } from '../../plans/load-cases.ts'
import { supplyOf } from '../../plans/supply.ts'

const job = (torque: string) => `battery house { nominal: 48 V  window: 44..56 V }
drive main {
  motor m { power: 6 kW  speed: 1500 rpm  peak-torque: ${torque}  efficiency: 90 % }
  controller c { input: 42..60 V  efficiency: 95 % }
  cable feed { from: house  to: c  conductor: 50 mm2  length: 6 m  insulation: 105 degC }
}`

export default check({
  id: 'supply/too-low-at-peak',
  severity: 'warning',
  title: 'Voltage at peak torque below the input range',
  why: 'A controller switches off below its lowest voltage. At rated power it has enough; at peak torque, as when the boat is stopped in a hurry, the cables lose more.',
  source: theJobFile('the input range stated at the controller'),
  on: 'controller',
  needs: { input: 'controller.input' },
  fires: job('90 N·m').replace('  cable', '# ^^^^^^^^^^^^ only\n  cable'),
  quiet: job('50 N·m'),
  run: ({ input }, lookup) => {
    const { block } = lookup
    const [flow] = caseFlows('peak', block, lookup)
    const low = input.value.low
    const supply = supplyOf(block, lookup)
    // What is too low at rated power is found by `supply/too-low`, or by the window of the battery.
    if (!flow || low === undefined || !supply || !reaches(supply.volts, low)) return []
    const isImpossible = flow.share !== undefined
    if (!isImpossible && (flow.volts === undefined || reaches(flow.volts, low))) return []
    const limit = formatSi(low, 'voltage', 'metric', 3)
    const found = isImpossible
      ? formatShare(flow.share ?? 0, 2)
      : formatSi(flow.volts ?? 0, 'voltage', 'metric', 3)
    const message = isImpossible
      ? `At peak torque only ${found} of the power can come through the cables.`
      : `With the motors at peak torque only ${found} reaches it; it needs ${limit}.`
    return [
      atHead(block, {
        message,
        detail:
          'The network with the motors at peak torque and rated speed, all else at rated power. Batteries are at the low end of their window, conductors hot.',
        todo: 'Use larger or shorter conductors on the way, or limit the peak current of the controller.',
        found,
        limit: `at least ${isImpossible ? '100 %' : limit}`,
      }),
    ]
  },
})
