import type { Block } from '../../../job/model.ts'
import type { Feet } from './feet.ts'
import { type MovedInWords, movedIn } from './moved-in-words.ts'
import { plannedAfter } from './moves.ts'
import { notedMoves } from './noted-moves.ts'

/** A move that is written after a reading and does not say that it was made. */
export interface PlannedMove {
  readonly words: readonly MovedInWords[]
  /** What it would do to each foot of the bed, m, + up and + to starboard; undefined where that is not known. */
  readonly feet?: readonly { readonly name: string; readonly up: number; readonly starboard: number }[]
}

/** The moves planned after a reading, for the feet of the bed where those are known. */
export const plannedFrom = (reading: Block, bed: Feet | undefined): readonly PlannedMove[] =>
  plannedAfter(reading).map((move) => {
    const noted = bed && notedMoves([move], bed)
    const feet = bed?.feet.map(({ name }, i) => ({
      name,
      up: noted?.[i]?.vertical.value ?? 0,
      starboard: noted?.[i]?.horizontal.value ?? 0,
    }))
    return { words: movedIn(move), ...(noted && feet && { feet }) }
  })
