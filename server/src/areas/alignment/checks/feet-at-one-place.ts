import { at, check, commonPractice } from '../../../checks/check.ts'
import { oneLine } from '../../../checks/one-line.ts'
import { factOf } from '../../../job/model.ts'
import { blockNear } from '../../../store/block-by-id.ts'
import { onOneSpot, type PlacedFoot, placedFeet } from '../feet-placed.ts'

export default check({
  id: 'alignment/feet-at-one-place',
  severity: 'warning',
  title: 'Two feet in the same place',
  why: 'Two feet cannot be in the same place. Most often a line was copied, and its side or distance was not changed. Growth and roll of the machine are then calculated for feet that do not exist.',
  source: commonPractice('common practice, no source'),
  on: 'bed',
  plan: 'waits',
  fires: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm port }
#                                                  ^^^^^^^^^^^ aft-port
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
}`,
  run: (_facts, { block }) => {
    const placed = placedFeet(block)
    const acrossOf = (foot: PlacedFoot) => factOf(blockNear(block, foot.block), 'foot.across')
    return placed.flatMap((foot, i) => {
      const other = placed.slice(0, i).find((one) => onOneSpot(one, foot))
      const [across, otherAcross] = [acrossOf(foot), other && acrossOf(other)]
      if (!other || !across || !otherAcross) return []
      return [
        at(across, {
          ...oneLine(
            `Foot ${foot.name} is in the same place as foot ${other.name}.`,
            'Two feet are in the same place.',
          ),
          todo: 'Check the side, `across` and `from-coupling` of both feet at the machine.',
          related: [{ at: otherAcross.at, message: 'the other foot' }],
        }),
      ]
    })
  },
})
