import { atHead, check, theJobFile } from '../../../../checks/check.ts'
import { addFact } from '../../../../checks/fix-text.ts'
import { holds } from '../../../../quantity/band.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { nameOfString } from '../../../common/battery-string.ts'
import { sideBySide } from '../../plans/side-by-side.ts'

const job = (pole: string) => `battery aft { nominal: 48 V  window: 42..56 V }
battery forward { nominal: 48 V  window: 42..56 V }
drive main {
  cable link {
    from: aft
    to: forward
    conductor: 95 mm2
    length: 0.4 m
    insulation: 105 degC${pole}
  }
  controller { input: 72..120 V }
  cable feed { from: aft  to: controller  conductor: 95 mm2  length: 2 m  insulation: 105 degC }
}`

export default check({
  id: 'cable/series-or-parallel',
  severity: 'warning',
  title: 'Batteries that may be in series',
  why: 'A cable between two batteries that does not state its pole joins both poles: the batteries are side by side, at the voltage of one. If they are in series, all voltages are twice as high, and fuses and switches are checked against half.',
  source: theJobFile('the input range of the controller'),
  on: 'cable',
  needs: { from: 'cable.from', to: 'cable.to' },
  fires: job('').replace('cable link {', 'cable link {\n# ^^^^^^^^^^ side by side'),
  quiet: job('\n    pole: series'),
  run: (_facts, lookup) => {
    const { block } = lookup
    const joined = sideBySide(block, lookup)
    const sum = joined?.nominal
    if (!joined || sum === undefined) return []
    const controller = joined.controllers.find(
      ({ input, high, low }) => holds(input, sum) && (!holds(input, low) || !holds(input, high)),
    )
    if (!controller) return []
    const [found, limit] = [formatSi(sum, 'voltage'), lookup.showBand(controller.input, 'voltage')]
    const names = nameOfString(joined.batteries.map(lookup.blockOf))
    return [
      atHead(block, {
        message: `The batteries ${names} are side by side; in series they give ${found}.`,
        detail: `The controller accepts ${limit}. Without \`pole\`, the cable joins both poles.`,
        todo: 'State `pole: series` if they are in series. If not, choose a controller for the voltage of one.',
        found,
        limit,
        related: [{ at: lookup.blockOf(controller.id).head, message: 'the controller' }],
      }),
    ]
  },
  fixes: (_finding, { block }) =>
    block ? [{ title: 'Join them in series', edits: [addFact(block, 'pole', 'series')] }] : [],
})
