import type { NotedMove } from '../../../engineering/alignment/hypothesis.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { feetOf, machineOn } from './feet.ts'
import { feetBeyond, type Misfit } from './misfit.ts'
import { movesAfter, readingsOf } from './moves.ts'
import { notedMoves } from './noted-moves.ts'
import { stepOf } from './steps.ts'

/** How far a foot may stand off the plane through all, where no nut sets it, m. Common practice, no source. */
const byHand = 5e-5

/** How far the feet stand off the plane through all of them, + above it, after a move that is the last of those that add up to it: one stiff machine
 * cannot rest on feet that are not in one plane. Undefined where that is not known, or where later moves count with it or the lifts of all feet that
 * were off were read since: they show whether a foot hangs. Never throws on figures. */
export const outOfPlane = (move: Block, lookup: Lookup): Misfit | undefined =>
  move.parent && misfitsIn(move.parent, lookup.from(move.parent)).get(idOf(move))

/** By the last of the moves. Moves between two readings are taken together, for they may complete each other; once feet are out of plane, later moves are
 * added until they are in plane again, or until the lifts of all of them were read. */
const misfitsIn = plan((drive: Block, lookup: Lookup): ReadonlyMap<BlockId, Misfit> => {
  const inPlane = new Map<BlockId, Misfit>()
  let open: (Misfit & { readonly sum: readonly NotedMove[]; readonly lifted: Set<string> }) | undefined
  try {
    const outcome = feetOf(lookup.near('bed'))
    if (!outcome.ok) return new Map()
    const bed = outcome.value
    const machine = machineOn(bed)
    if (!machine.ok) return new Map()
    const limit = bed.adjuster.by === 'nut' ? stepOf(bed.adjuster) / 2 : byHand
    for (const reading of readingsOf(drive)) {
      for (const { name } of factOf(reading, 'reading.lifts')?.value ?? []) open?.lifted.add(name)
      if (open && feetBeyond(open).every(({ name }) => open?.lifted.has(name))) open = undefined
      const moves = movesAfter(reading)
      const sum = moves.length === 0 ? undefined : notedMoves(moves, bed, open?.sum)
      // What is not known leaves nothing to judge.
      if (moves.length > 0 && !sum) open = undefined
      if (!sum) continue
      const found: Misfit = {
        moves: [...(open?.moves ?? []), ...moves.map(idOf)],
        feet: machine.value(sum).misfit.map(({ name, vertical }) => ({ name, off: vertical })),
        limit,
      }
      const isOut = feetBeyond(found).length > 0
      open = isOut ? { ...found, sum, lifted: new Set() } : undefined
      const last = found.moves.at(-1)
      if (last && !isOut) inPlane.set(last, found)
    }
  } catch (error) {
    if (error instanceof OutOfRange) return new Map()
    throw error
  }
  const last = open?.moves.at(-1)
  return open && last ? inPlane.set(last, { moves: open.moves, feet: open.feet, limit: open.limit }) : inPlane
})
