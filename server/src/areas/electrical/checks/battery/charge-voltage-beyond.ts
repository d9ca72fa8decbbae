import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { elide } from '../../../../quantity/elide.ts'
import { headOf, stringOf } from '../../../common/battery-string.ts'
import { isHighStated } from '../../../common/string-facts.ts'
import { highestOfBank } from '../../plans/banks-around.ts'
import { chargingOf, highestOutput } from '../../plans/charging.ts'

export default check({
  id: 'battery/charge-voltage-beyond',
  severity: 'error',
  title: 'Charger voltage above the window of the battery',
  why: 'A battery that is charged above its window is damaged: lead gasses, lithium may burn. All else that is joined to it sees the voltage too.',
  source: theJobFile('the window stated at the battery'),
  on: 'battery',
  needs: { window: 'battery.window' },
  fires: `battery house {
  nominal: 96 V
  window: 84..108 V
#         ^^^^^^^^^ 115 V
}
charger shore { output: 84..115 V  current: 40 A }
cable charge { from: shore  to: house }`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
charger shore { output: 84..108 V  current: 40 A }
cable charge { from: shore  to: house }`,
  run: ({ window }, lookup) => {
    const { block, blockOf } = lookup
    const charging = chargingOf(block, lookup)
    // Of a string the first battery stands for all.
    if (!charging || headOf(block, lookup) !== block) return []
    const high = highestOfBank(block, lookup)
    if (high === undefined || !isHighStated(stringOf(block, lookup))) return []
    return charging.feeders.map(blockOf).flatMap((feeder) => {
      const gives = highestOutput(feeder)
      if (gives === undefined || reaches(high, gives)) return []
      const [found, limit] = [lookup.show(gives, 'voltage'), lookup.show(high, 'voltage')]
      return [
        at(window, {
          message: `${elide(feeder.name ?? feeder.kind)} charges at up to ${found}; the battery goes to ${limit}.`,
          todo: 'Set or choose the charger for this battery, or correct the window.',
          found,
          limit: `at most ${limit}`,
        }),
      ]
    })
  },
})
