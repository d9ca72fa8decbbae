import type { Block } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { feetOf, machineOn } from './feet.ts'
import type { Misfit } from './misfit.ts'
import { movesAfter, readingsOf } from './moves.ts'
import { notedMoves } from './noted-moves.ts'

/** How far what is noted of a foot may differ from what the machine can have done, m. Common practice, no source. */
const limit = 5e-5

/** How far each foot, as noted up to this move, the last before the next reading, is off the line that a stiff machine turns to, + to starboard;
 * undefined after other moves, or where it is not known. Never throws on figures. */
export const slidApart = (move: Block, lookup: Lookup): Misfit | undefined =>
  move.parent && misfitsIn(move.parent, lookup.from(move.parent)).get(idOf(move))

/** Moves between two readings are taken together, for they may complete each other. */
const misfitsIn = plan((drive: Block, lookup: Lookup): ReadonlyMap<BlockId, Misfit> => {
  try {
    const outcome = feetOf(lookup.near('bed'))
    if (!outcome.ok) return new Map()
    const bed = outcome.value
    const machine = machineOn(bed)
    if (!machine.ok) return new Map()
    return new Map(
      readingsOf(drive).flatMap((reading) => {
        const moves = movesAfter(reading)
        const last = moves.at(-1)
        const sum = last && notedMoves(moves, bed)
        if (!last || !sum) return []
        const feet = machine.value(sum).misfit.map(({ name, horizontal }) => ({ name, off: horizontal }))
        return [[idOf(last), { moves: moves.map(idOf), feet, limit }] as const]
      }),
    )
  } catch (error) {
    if (error instanceof OutOfRange) return new Map()
    throw error
  }
})
