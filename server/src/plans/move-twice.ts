import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { once } from '../syntax/once.ts'
import type { FootMove } from '../vocabulary/shapes/foot-move.ts'
import { standingIn } from './alignment-log.ts'
import { movesAfter, readingBefore, readingsFrom } from './alignment-moves.ts'

/** What was done to the feet, the same for two moves that did the same; undefined where nothing was moved, or not all could be read. */
const doneBy = once(({ others, unread }: Block): string | undefined => {
  const feet = [...others].map(([name, { value }]) => {
    const { turn = 0, rise = 0, starboard = 0 } = value as FootMove
    return [name, turn, rise, starboard] as const
  })
  const moved = feet.filter(([, ...by]) => by.some((one) => one !== 0))
  return unread.size > 0 || moved.length === 0 ? undefined : JSON.stringify(moved.sort())
})

/** The move after the same reading that this one repeats, foot by foot and with the same date or none. Undefined where the next reading shows that both
 * were made. Never throws on figures. */
export function repeated(move: Block, lookup: Lookup): Block | undefined {
  const reading = readingBefore(move)
  const done = doneBy(move)
  if (!reading || done === undefined) return undefined
  const all = movesAfter(reading)
  const day = factOf(move, 'move.done')?.value
  const first = all.slice(0, all.indexOf(move)).find((one) => {
    const other = factOf(one, 'move.done')?.value
    return doneBy(one) === done && (day === undefined || other === undefined || day === other)
  })
  return first && !wasMade(move, reading, lookup) ? first : undefined
}

/** Whether the first reading that is held against this move is as it should have brought it. */
function wasMade(move: Block, reading: Block, lookup: Lookup): boolean {
  for (const later of readingsFrom(reading)) {
    const { against } = standingIn(later, lookup)
    if (later !== reading && against)
      return against.type === 'compared' && against.mismatch.noise && against.moves.includes(move)
  }
  return false
}
