import { atHead, check, commonPractice } from '../../../checks/check.ts'
import { formatLength, formatLimit } from '../../../quantity/format-measures.ts'
import { idOf } from '../../../store/block-by-id.ts'
import { listed } from '../../common/listed.ts'
import { outOfPlane } from '../plans/feet-out-of-plane.ts'
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
  id: 'alignment/feet-out-of-plane',
  severity: 'warning',
  title: 'Moves that leave the feet out of one plane',
  why: 'A machine is stiff: it rests on all feet only if their seats are in one plane. Otherwise a foot hangs in the air, or the machine bends when it is tightened down and the coupling moves with every nut. Moves between two readings are added up; a roll of the whole machine is not a fault. The limit is half a step of the nuts, or 0.05 mm where shims or a gauge set the height.',
  source: commonPractice('plane by least squares; how far a foot may be off it: common practice, no source'),
  on: 'move',
  plan: 'waits',
  fires: job(`  move after dry-1 {
# ^^^^^^^^^^^^^^^^ aft-stbd and fwd-port 0.75 mm above
    done: 2026-03-04
    fwd-port: up 7 flats
    aft-stbd: up 2 flats
  }`),
  quiet: job(`  move after dry-1 {
    done: 2026-03-04
    fwd-port: up 7 flats
    fwd-stbd: up 7 flats
    aft-port: up 2 flats
    aft-stbd: up 2 flats
  }`),
  run: (_facts, lookup) => {
    const { block, system } = lookup
    const found = outOfPlane(block, lookup)
    const beyond = found ? feetBeyond(found) : []
    if (!found || beyond.length === 0) return []
    const side = (where: string, sign: 1 | -1): readonly string[] => {
      const by = new Map<string, string[]>()
      for (const { name, off } of beyond)
        if (off * sign > 0) {
          const distance = formatLength(Math.abs(off), system)
          by.set(distance, [...(by.get(distance) ?? []), name])
        }
      return [...by].map(([distance, names]) => `${listed(names)} ${distance} ${where}`)
    }
    const off = listed([...side('above', 1), ...side('below', -1)])
    const limit = formatLimit(found.limit, system)
    const most = formatLength(mostOff(found), system)
    return [
      atHead(block, {
        message: `${found.moves.length > 1 ? 'Together, these moves leave' : 'This move leaves'} the feet ${most} out of one plane; ${limit} is allowed.`,
        detail: `${off} the plane through all feet. A foot hangs, or the machine bends when it is tightened down.`,
        todo: 'Look for air under the feet. Read the lifts of all feet and write them into the next reading. If a move was noted wrongly, correct it.',
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
