import { atHead, check, theLanguage } from '../../../../checks/check.ts'
import { isReached } from '../../plans/let-through.ts'

export default check({
  id: 'cable/none-ends-here',
  severity: 'warning',
  title: 'Part that no cable reaches',
  why: 'What no cable reaches is in no network: what it draws or gives is missing from the currents of the cables, and from how long the battery lasts.',
  source: theLanguage,
  on: ['busbar', 'charger', 'converter', 'load'],
  fires: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  load lights { power: 600 W }
# ^^^^^^^^^^^ No cable
}`,
  quiet: `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  load lights { power: 600 W }
  cable to-lights { from: house  to: lights  conductor: 4 mm2  length: 2 m  insulation: 105 degC }
  protection lights-fuse { kind: fuse  rating: 16 A  in: to-lights  at: 0 mm }
}`,
  run: (_facts, lookup) => {
    const { block } = lookup
    if (lookup.isTaken || block.likeUnknown || isReached(block, lookup)) return []
    return [
      atHead(block, {
        message: `No cable ends at this ${block.kind}.`,
        todo: 'Write the cable that reaches it, with its name as `from` or `to`.',
      }),
    ]
  },
})
