import { slidApart, slidLimit } from '../../plans/feet-slid-apart.ts'
import { listed } from '../../plans/listed.ts'
import { saidLength, saidLimit } from '../../quantity/said.ts'
import { atHead, check, commonPractice } from '../check.ts'

const job = (move: string) => `drive main {
  coupling { flange-diameter: 125 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
${move}
}`

export default check({
  id: 'alignment/feet-slid-apart',
  severity: 'warning',
  title: 'Feet that went different ways sideways',
  why: 'A machine is stiff: feet at the same distance from the coupling go sideways together, and those between the ends go in proportion. A move that says otherwise is not what was done, and the next reading cannot be held against it. Moves between two readings are added up. The most is 0.05 mm, as well as a dial at each foot can tell.',
  source: commonPractice('line by least squares; how far a foot may be off it: common practice, no source'),
  on: 'move',
  plan: 'waits',
  fires: job(`  move after dry-1 {
# ^^^^^^^^^^^^^^^^ aft-port 1.00 mm to starboard and aft-stbd 1.00 mm to port
    aft-port: starboard 2 mm
    aft-stbd: none
  }`),
  quiet: job(`  move after dry-1 {
    aft-port: starboard 2 mm
    aft-stbd: starboard 2 mm
  }`),
  run: (_facts, context) => {
    const { block, system } = context
    const found = slidApart(block, context)
    if (!found) return []
    const feet = found.feet.map(
      ({ name, off }) => `${name} ${saidLength(Math.abs(off), system)} to ${off > 0 ? 'starboard' : 'port'}`,
    )
    const limit = saidLimit(slidLimit, system)
    return [
      atHead(block, {
        message: `${found.moves.length > 1 ? 'Together, these moves slide' : 'This move slides'} the feet as no stiff machine can go: ${listed(feet)} of where the others take it; ${limit} is the most.`,
        todo: 'Write how far each foot went sideways. A foot that is not named, or is `none`, counts as not moved.',
        found: saidLength(Math.max(...found.feet.map(({ off }) => Math.abs(off))), system),
        limit: `at most ${limit}`,
        related: found.moves
          .filter((move) => move !== block)
          .map((move) => ({
            at: { section: move.section, span: move.node.headSpan },
            message: 'added to this one',
          })),
      }),
    ]
  },
})
