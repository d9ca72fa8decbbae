import { atHead, check, published } from '../../../../checks/check.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { flowAt } from '../../plans/load-flow.ts'

const job = (length: string) => `battery house { nominal: 12 V  window: 11..14 V }
drive main {
  load winch { power: 2 kW }
  cable to-winch { from: house  to: winch  conductor: 6 mm2  length: ${length}  insulation: 105 degC }
}`

export default check({
  id: 'supply/impossible',
  severity: 'error',
  title: 'Power that cannot come through the cables',
  why: 'Through a resistance at most V² / 4R can be drawn: the voltage falls with each further ampere until the load switches off. No current of the cables on the way can then be given.',
  source: published('maximum power transfer; nodal analysis with constant powers'),
  on: ['controller', 'motor', 'load', 'converter'],
  fires: job('20 m').replace('2 kW }', '2 kW }\n# ^^^^^^^^^^ at most'),
  quiet: job('1 m'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const share = flowAt(block, lookup)?.share
    if (share === undefined) return []
    const found = formatShare(share, 2)
    return [
      atHead(block, {
        message: `The network can give at most ${found} of the rated power here.`,
        detail:
          'Batteries at the low end of their window, with all drives and loads at rated power; more resistance than power can pass is in the cables on the way.',
        todo: 'Check the length and the conductor of each cable on the way and the power. Then use larger conductors or a higher voltage.',
        found,
      }),
    ]
  },
})
