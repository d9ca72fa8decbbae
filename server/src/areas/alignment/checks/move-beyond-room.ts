import { atHead, check, theJobFile } from '../../../checks/check.ts'
import { formatLength } from '../../../quantity/format-measures.ts'
import { listed } from '../../common/listed.ts'
import { beyondRoom } from '../plans/beyond-room.ts'
import { isPlanned } from '../plans/moves.ts'

const job = (move: string) => `drive main {
  coupling { flange-diameter: 125 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft { from-coupling: 180 mm  across: 0 mm  travel-up: 1 mm }
    foot fwd { from-coupling: 560 mm  across: 0 mm  hole-clearance: 0.5 mm }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
${move}
}`

export default check({
  id: 'alignment/move-beyond-room',
  severity: 'warning',
  title: 'Move beyond the travel of a foot',
  why: 'A stud meets the edge of its hole, and a nut the end of its thread. If the log says that a foot moved farther, the move or the travel stated in the bed is wrong, and the next steps could be wrong too. Each move is judged alone, because the bed does not say when its travel was measured.',
  source: theJobFile('travel-up, travel-down, hole-clearance and pack of the foot'),
  on: 'move',
  plan: 'waits',
  fires: job(`  move after dry-1 {
# ^^^^^^^^^^^^^^^^ aft 2.67 mm up, travel-up is 1.00 mm; fwd 3.00 mm to port, hole-clearance is 0.50 mm
    done: 2026-03-04
    aft: up 8 flats
    fwd: port 3 mm
  }`),
  quiet: job(`  move after dry-1 {
    done: 2026-03-04
    aft: up 3 flats
    fwd: port 0.5 mm
  }`),
  run: (_facts, lookup) => {
    const { block, system } = lookup
    const found = beyondRoom(block, lookup)
    if (found.length === 0) return []
    const feet = found.map(
      ({ name, way, went, room, can }) =>
        `${name} ${formatLength(went, system)} ${way}, ${room} is ${formatLength(can, system)}`,
    )
    const planned = isPlanned(block)
    const several = new Set(found.map(({ name }) => name)).size > 1
    const facts = [...new Set(found.map(({ room }) => `\`${room}\``))]
    return [
      atHead(block, {
        message: `This move takes ${several ? 'feet' : 'a foot'} farther than the bed allows.`,
        detail: `${feet.join('; ')}.`,
        ...(planned && { plan: 'goes-on' }),
        todo: `${planned ? 'Measure the room. Correct the planned move' : 'Measure what was done. Correct the move'}, or ${listed(facts)} of the ${several ? 'feet' : 'foot'}.`,
      }),
    ]
  },
})
