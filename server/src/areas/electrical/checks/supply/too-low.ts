import { atHead, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { type Block, factOf } from '../../../../job/model.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { flowAt } from '../../plans/load-flow.ts'
import { supplyOf } from '../../plans/supply.ts'

const job = (area: string) => `battery house { nominal: 48 V  window: 44..56 V }
drive main {
  motor m { power: 6 kW  efficiency: 90 % }
  controller c { input: 42..60 V  efficiency: 95 % }
  cable feed { from: house  to: c  conductor: ${area}  length: 9 m  insulation: 105 degC }
}`

/** The lowest voltage at which it works, V. */
const lowestInput = (part: Block): number | undefined =>
  part.kind === 'controller' || part.kind === 'converter'
    ? factOf(part, `${part.kind}.input`)?.value.low
    : undefined

export default check({
  id: 'supply/too-low',
  severity: 'error',
  title: 'Voltage under load below the input range',
  why: 'A controller switches off below its lowest voltage: the drive stops at full power, when it is needed most. The window of the battery may be within the range, and what is left behind the cables not.',
  source: theJobFile('the input range stated at the controller or converter'),
  on: ['controller', 'converter'],
  fires: job('25 mm2').replace('  cable', '# ^^^^^^^^^^^^ only\n  cable'),
  quiet: job('95 mm2'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const supply = supplyOf(block, lookup)
    const low = lowestInput(block)
    const from = flowAt(block, lookup)?.volts
    // A battery whose own window goes lower is found by `cable/controller-input-outside`.
    if (!supply || low === undefined || from === undefined || from < low || reaches(supply.volts, low))
      return []
    const [found, limit] = [supply.volts, low].map((volts) => formatSi(volts, 'voltage', 'metric', 3)) as [
      string,
      string,
    ]
    return [
      atHead(block, {
        message: `With all at rated power only ${found} reaches it; it needs ${limit}.`,
        detail: `The batteries give ${formatSi(from, 'voltage', 'metric', 3)} at the low end of their window; the rest is lost in the cables.`,
        todo: 'Use larger conductors on the way, or shorten them. Or end the use of the battery at a higher voltage.',
        found,
        limit: `at least ${limit}`,
      }),
    ]
  },
})
