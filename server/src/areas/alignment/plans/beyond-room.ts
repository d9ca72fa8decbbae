import { type Block, factOf } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { feetOf } from './feet.ts'
import { notedMoves } from './noted-moves.ts'

/** A foot that is noted to have gone farther than the bed lets it. */
export interface BeyondRoom {
  readonly name: string
  /** The fact of the foot that says how far it can. */
  readonly room: 'travel-up' | 'travel-down' | 'pack' | 'hole-clearance'
  readonly way: 'up' | 'down' | 'to port' | 'to starboard'
  /** m */
  readonly went: number
  /** m */
  readonly can: number
}

/** How much farther a foot may have gone, m: a gauge measures it so well. Common practice, no source. */
const measured = 2e-5

/** Feet that a move takes farther than the bed says they can go. The bed may have been stated at any time, so what went before is not added. Never throws
 * on figures. */
export function beyondRoom(move: Block, lookup: Lookup): readonly BeyondRoom[] {
  try {
    const bed = lookup.near('bed')
    const read = feetOf(bed)
    const moved = read.ok ? notedMoves([move], read.value) : undefined
    if (!read.ok || !moved) return []
    const onShims = bed && factOf(bed, 'bed.adjuster')?.value === 'shims'
    return read.value.feet.flatMap(({ name, up, down, pack, sideways }, i) => {
      const [rise, slid] = [moved[i]?.vertical.value ?? 0, moved[i]?.horizontal.value ?? 0]
      const ways: readonly (Omit<BeyondRoom, 'name' | 'can'> & { readonly can: number | undefined })[] = [
        { room: 'travel-up', way: 'up', went: rise, can: up },
        { room: 'travel-down', way: 'down', went: -rise, can: down },
        // Only shims that lie there can be taken out.
        { room: 'pack', way: 'down', went: -rise, can: onShims ? pack : undefined },
        {
          room: 'hole-clearance',
          way: slid > 0 ? 'to starboard' : 'to port',
          went: Math.abs(slid),
          can: sideways,
        },
      ]
      return ways.flatMap(({ can, ...way }) =>
        can !== undefined && way.went > can + measured ? [{ name, ...way, can }] : [],
      )
    })
  } catch (error) {
    if (error instanceof OutOfRange) return []
    throw error
  }
}
