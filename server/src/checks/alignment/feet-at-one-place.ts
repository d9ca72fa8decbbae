import { at, check, commonPractice } from '../check.ts'
import { onOneSpot, placedFeet } from '../feet-placed.ts'

export default check({
  id: 'alignment/feet-at-one-place',
  severity: 'warning',
  title: 'Two feet at one place',
  why: 'Two feet cannot stand on one spot: most often a line was copied and its side, port or starboard, or its distance was not changed. Growth and roll of the machine are then worked out for feet it has not.',
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
    const placed = placedFeet(block).map((foot) => ({ ...foot, spot: { x: foot.x.value, y: foot.y.value } }))
    return placed.flatMap(({ name, spot, y }, i) => {
      const other = placed.slice(0, i).find((one) => onOneSpot(one.spot, spot))
      if (!other) return []
      return [
        at(y, {
          message: `Foot ${name} stands where foot ${other.name} stands.`,
          todo: 'Check the side, `across` and `from-coupling` of both at the machine.',
          related: [{ at: other.y.at, message: 'the other foot' }],
        }),
      ]
    })
  },
})
