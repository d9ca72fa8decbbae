import type { NotedMove } from '../../../engineering/alignment/hypothesis.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { feetOf, machineOn } from './feet.ts'
import { movesAfter, readingsOf } from './moves.ts'
import { notedMoves } from './noted-moves.ts'
import { stepOf } from './steps.ts'

/** Moves that set the feet where one stiff machine cannot rest on all of them. */
export interface OutOfPlane {
  /** All that add up to it, as they are written. */
  readonly moves: readonly BlockId[]
  /** The feet that stand off the plane through all feet by more than the limit, m, + above it. */
  readonly feet: readonly { readonly name: string; readonly off: number }[]
  /** m */
  readonly limit: number
}

/** How far a foot may stand off the plane through all, where no nut sets it, m. Common practice, no source. */
const byHand = 5e-5

/** What a move, as the last of those that add up to it, left out of plane; undefined where nothing is, or where the lifts of all feet that are were read
 * since: they show whether a foot hangs. Never throws on figures. */
export const outOfPlane = (move: Block, lookup: Lookup): OutOfPlane | undefined =>
  move.parent && openIn(move.parent, lookup.from(move.parent)).get(idOf(move))

/** Those that are open. Moves between two readings are taken together, for they may complete each other; once feet are out of plane, later moves are
 * added until they are in plane again, or until the lifts of all of them were read. */
const openIn = plan((drive: Block, lookup: Lookup): ReadonlyMap<BlockId, OutOfPlane> => {
  let open: (OutOfPlane & { readonly sum: readonly NotedMove[]; readonly lifted: Set<string> }) | undefined
  try {
    const outcome = feetOf(lookup.near('bed'))
    if (!outcome.ok) return new Map()
    const bed = outcome.value
    const machine = machineOn(bed)
    if (!machine.ok) return new Map()
    const limit = bed.adjuster.by === 'nut' ? stepOf(bed.adjuster) / 2 : byHand
    for (const reading of readingsOf(drive)) {
      for (const { name } of factOf(reading, 'reading.lifts')?.value ?? []) open?.lifted.add(name)
      if (open?.feet.every(({ name }) => open?.lifted.has(name))) open = undefined
      const moves = movesAfter(reading)
      const sum = moves.length === 0 ? undefined : notedMoves(moves, bed, open?.sum)
      // What is not known leaves nothing to judge.
      if (moves.length > 0 && !sum) open = undefined
      if (!sum) continue
      const feet = machine
        .value(sum)
        .misfit.map(({ name, vertical }) => ({ name, off: vertical }))
        .filter(({ off }) => Math.abs(off) > limit * (1 + 1e-9))
      const since: readonly BlockId[] = open?.moves ?? []
      open =
        feet.length > 0
          ? { moves: [...since, ...moves.map(idOf)], feet, limit, sum, lifted: new Set() }
          : undefined
    }
  } catch (error) {
    if (error instanceof OutOfRange) return new Map()
    throw error
  }
  const last = open?.moves.at(-1)
  return new Map(open && last ? [[last, open]] : [])
})
