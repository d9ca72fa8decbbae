import type { Block } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { feetOf, machineOn } from './feet.ts'
import { movesAfter, readingsOf } from './moves.ts'
import { notedMoves } from './noted-moves.ts'

/** Sideways moves between two readings that one stiff machine cannot make. */
export interface SlidApart {
  /** All of them, as they are written. */
  readonly moves: readonly BlockId[]
  /** The feet that are off the line that the machine turns to, m, + to starboard. */
  readonly feet: readonly { readonly name: string; readonly off: number }[]
}

/** How far what is noted of a foot may differ from what the machine can have done, m. Common practice, no source. */
export const slidLimit = 5e-5

/** What is noted to starboard and port up to this move, the last before the next reading, where no stiff machine can have done it; undefined elsewhere.
 * Never throws on figures. */
export const slidApart = (move: Block, lookup: Lookup): SlidApart | undefined =>
  move.parent && apartIn(move.parent, lookup.from(move.parent)).get(idOf(move))

/** Moves between two readings are taken together, for they may complete each other. */
const apartIn = plan((drive: Block, lookup: Lookup): ReadonlyMap<BlockId, SlidApart> => {
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
        const feet = machine
          .value(sum)
          .misfit.map(({ name, horizontal }) => ({ name, off: horizontal }))
          .filter(({ off }) => Math.abs(off) > slidLimit * (1 + 1e-9))
        return feet.length > 0 ? [[idOf(last), { moves: moves.map(idOf), feet }] as const] : []
      }),
    )
  } catch (error) {
    if (error instanceof OutOfRange) return new Map()
    throw error
  }
})
