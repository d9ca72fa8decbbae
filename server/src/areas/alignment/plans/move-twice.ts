import { type Block, factOf } from '../../../job/model.ts'
import { blockNear, idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { blockPlan, plan } from '../../../store/plan.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'
import { type ReadingInLog, readingInLog } from './log.ts'
import { isPlanned, movesAfter, plannedAfter, readingBefore, readingsOf } from './moves.ts'
import { movesCompared } from './reading-comparison.ts'

/** What was done to the feet, the same for two moves that did the same; undefined where nothing was moved, or not all could be read. */
const doneBy = blockPlan(({ others, unread }: Block): string | undefined => {
  const feet = [...others].map(([name, { value }]) => {
    const { turn = 0, rise = 0, starboard = 0 } = value as FootMove
    return [name, turn, rise, starboard] as const
  })
  const moved = feet.filter(([, ...by]) => by.some((one) => one !== 0))
  return unread.size > 0 || moved.length === 0 ? undefined : JSON.stringify(moved.sort())
})

const keyOf = (done: string, day: string | undefined): string => `${day ?? ''} ${done}`

/** The first of some moves for each thing done: on a day, and on any. */
function firstOf(moves: readonly Block[]): ReadonlyMap<string, BlockId> {
  const first = new Map<string, BlockId>()
  for (const move of moves) {
    const done = doneBy(move)
    if (done === undefined) continue
    for (const day of new Set([undefined, factOf(move, 'move.done')?.value])) {
      const key = keyOf(done, day)
      if (!first.has(key)) first.set(key, idOf(move))
    }
  }
  return first
}

const firstMade = blockPlan((reading: Block) => firstOf(movesAfter(reading)))
const firstPlanned = blockPlan((reading: Block) => firstOf(plannedAfter(reading)))

/** The move after the same reading that this one repeats, foot by foot and with the same date; a planned one also one that was made. Undefined where the
 * next reading shows that both were made. Never throws on figures. */
export function repeated(move: Block, lookup: Lookup): Block | undefined {
  const reading = readingBefore(move)
  const done = doneBy(move)
  if (!reading || done === undefined) return undefined
  const key = keyOf(done, factOf(move, 'move.done')?.value)
  const planned = isPlanned(move)
  const first =
    (planned ? firstMade(reading).get(key) : undefined) ??
    (planned ? firstPlanned : firstMade)(reading).get(key)
  if (first === undefined || first === idOf(move)) return undefined
  return planned || !wasMade(move, reading, lookup) ? blockNear(move, first) : undefined
}

/** The first reading after each that is held against an earlier one. */
const nextHeld = plan((drive: Block, lookup: Lookup): ReadonlyMap<BlockId, ReadingInLog['against']> => {
  const next = new Map<BlockId, ReadingInLog['against']>()
  let held: ReadingInLog['against']
  for (const reading of readingsOf(drive).toReversed()) {
    next.set(idOf(reading), held)
    held = readingInLog(reading, lookup).against ?? held
  }
  return next
})

/** Whether the first reading that is held against this move is as it should have brought it. */
function wasMade(move: Block, reading: Block, lookup: Lookup): boolean {
  const against = reading.parent && nextHeld(reading.parent, lookup).get(idOf(reading))
  return against?.type === 'compared' && against.mismatch.noise && movesCompared(against, move).includes(move)
}
