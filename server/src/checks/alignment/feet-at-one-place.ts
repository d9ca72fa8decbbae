import { childrenOf, factOf } from '../../job/model.ts'
import { at, check, commonPractice } from '../check.ts'

/** Studs do not stand nearer to each other than this, m. */
const apart = 0.01

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
    const placed = childrenOf(block, 'foot').flatMap((foot) => {
      const [x, y] = [factOf(foot, 'foot.from-coupling'), factOf(foot, 'foot.across')]
      return x && y ? [{ name: foot.name ?? 'the other', x, y }] : []
    })
    return placed.flatMap(({ x, y }, i) => {
      const other = placed
        .slice(0, i)
        .find((one) => Math.hypot(one.x.value - x.value, one.y.value - y.value) < apart)
      if (!other) return []
      return [
        at(y, {
          message: `This foot stands where ${other.name} stands.`,
          todo: 'Check the side, `across` and `from-coupling` of both at the machine.',
          related: [{ at: other.y.at, message: 'the other foot' }],
        }),
      ]
    })
  },
})
