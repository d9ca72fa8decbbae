import { atHead, check, commonPractice } from '../../../checks/check.ts'
import { formatLength, formatLimit } from '../../../quantity/format-measures.ts'
import { idOf } from '../../../store/block-by-id.ts'
import { listed } from '../../common/listed.ts'
import { slidApart } from '../plans/feet-slid-apart.ts'
import { feetBeyond, mostOff } from '../plans/misfit.ts'

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
  title: 'Feet moved sideways in different ways',
  why: 'A machine is stiff: feet at the same distance from the coupling move sideways together, and those between move in proportion. A move that says otherwise was not made like that, so the next reading cannot be compared with it. Moves between two readings are added up. The limit is 0.05 mm, about what a dial at each foot can show.',
  source: commonPractice('line by least squares; how far a foot may be off it: common practice, no source'),
  on: 'move',
  plan: 'waits',
  fires: job(`  move after dry-1 {
# ^^^^^^^^^^^^^^^^ aft-port 1.00 mm to starboard and aft-stbd 1.00 mm to port
    done: 2026-03-04
    aft-port: starboard 2 mm
    aft-stbd: none
  }`),
  quiet: job(`  move after dry-1 {
    done: 2026-03-04
    aft-port: starboard 2 mm
    aft-stbd: starboard 2 mm
  }`),
  run: (_facts, lookup) => {
    const { block, system } = lookup
    const found = slidApart(block, lookup)
    const beyond = found ? feetBeyond(found) : []
    if (!found || beyond.length === 0) return []
    const feet = beyond.map(
      ({ name, off }) =>
        `${name} ${formatLength(Math.abs(off), system)} to ${off > 0 ? 'starboard' : 'port'}`,
    )
    const limit = formatLimit(found.limit, system)
    const most = formatLength(mostOff(found), system)
    return [
      atHead(block, {
        message: `${found.moves.length > 1 ? 'Together, these moves slide' : 'This move slides'} the feet ${most} apart; a stiff machine allows ${limit}.`,
        detail: `${listed(feet)} of where the other feet take it.`,
        todo: 'Write how far each foot went sideways. A foot that is not named, or is `none`, counts as not moved.',
        found: most,
        limit: `at most ${limit}`,
        related: found.moves
          .filter((move) => move !== idOf(block))
          .map((move) => ({
            at: lookup.blockOf(move).head,
            message: 'added to this one',
          })),
      }),
    ]
  },
})
