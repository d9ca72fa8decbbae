import { type Block, childrenOf, factOf } from '../job/model.ts'
import { once } from '../syntax/once.ts'
import type { FootMove } from '../vocabulary/shapes/foot-move.ts'
import { between, hasTime, isLater } from './days.ts'

interface Taken {
  readonly reading: Block
  /** Its date, with the time where it has one; empty where none is known. */
  readonly day: string
}

interface Made {
  readonly move: Block
  /** Place in the order of the readings of the one it comes after; -1 for none. */
  readonly after: number
  readonly done: string | undefined
  /** Some foot was moved, as far as is known. */
  readonly moved: boolean
}

/** The readings of a drive in the order they were taken, and its moves as they are written. */
interface Log {
  readonly readings: readonly Taken[]
  readonly places: ReadonlyMap<Block, number>
  readonly moves: readonly Made[]
  /** The moves after each reading. */
  readonly after: readonly (readonly Block[])[]
  readonly byBlock: ReadonlyMap<Block, Made>
}

/** Whether every foot it names was left as it was. What could not be read may be a move. */
const movedNothing = ({ others, unread }: Block): boolean =>
  others.size > 0 &&
  unread.size === 0 &&
  [...others.values()].every(({ value }) =>
    Object.values(value as FootMove).every((by: number | undefined) => !by),
  )

/** In the order they were taken; those of one day by the clock where each has a time, else as they are written. */
function inOrder(readings: readonly Taken[]): readonly Taken[] {
  const dayOf = ({ day }: Taken): string => day.slice(0, 10)
  const untimed = new Set(readings.filter(({ day }) => !hasTime(day)).map(dayOf))
  return readings.toSorted((a, b) => {
    if (dayOf(a) !== dayOf(b)) return dayOf(a) < dayOf(b) ? -1 : 1
    return untimed.has(dayOf(a)) ? 0 : between(b.day, a.day)
  })
}

/** Sorted out once a drive. A reading without a date goes by the one written before it. */
const logOf = once((drive: Block): Log => {
  let day = ''
  const readings = inOrder(
    childrenOf(drive, 'reading').map((reading) => {
      day = factOf(reading, 'reading.taken')?.value ?? day
      return { reading, day }
    }),
  )
  const named = new Map(
    readings.flatMap(({ reading: { name, path } }, i) => [
      [name, i],
      [path, i],
    ]),
  )
  const moves = childrenOf(drive, 'move').map((move) => ({
    move,
    after: named.get(move.about?.text) ?? -1,
    done: factOf(move, 'move.done')?.value,
    moved: !movedNothing(move),
  }))
  const after: Block[][] = readings.map(() => [])
  for (const made of moves) after[made.after]?.push(made.move)
  return {
    readings,
    places: new Map(readings.map(({ reading }, i) => [reading, i])),
    moves,
    after,
    byBlock: new Map(moves.map((made) => [made.move, made])),
  }
})

/** The reading that counts: the last by date, and of one day the last in the file. */
export const lastReading = (drive: Block): Block | undefined => logOf(drive).readings.at(-1)?.reading

/** The reading a move says it comes after; the last where several have the name. */
export function readingBefore(move: Block): Block | undefined {
  const log = move.parent && logOf(move.parent)
  return log?.readings[log.byBlock.get(move)?.after ?? -1]?.reading
}

/** The reading taken before this one. */
export function readingAhead(reading: Block): Block | undefined {
  const log = reading.parent && logOf(reading.parent)
  return log?.readings[(log.places.get(reading) ?? 0) - 1]?.reading
}

/** The moves made from one reading to a later one of the same drive. */
export function movesBetween(from: Block, to: Block): readonly Block[] {
  const log = to.parent && logOf(to.parent)
  const [first, last] = [from, to].map((reading) => log?.places.get(reading))
  return !log || first === undefined || last === undefined ? [] : log.after.slice(first, last).flat()
}

/** All readings of a drive in the order they were taken. */
export const readingsOf = (drive: Block): readonly Block[] =>
  logOf(drive).readings.map(({ reading }) => reading)

/** The readings of its drive up to this one, oldest first. */
export function readingsUpTo(reading: Block): readonly Block[] {
  const log = reading.parent && logOf(reading.parent)
  const place = log?.places.get(reading)
  return log && place !== undefined
    ? log.readings.slice(0, place + 1).map((taken) => taken.reading)
    : [reading]
}

/** The readings of its drive from this one on. */
export function readingsFrom(reading: Block): readonly Block[] {
  const log = reading.parent && logOf(reading.parent)
  const place = log?.places.get(reading)
  return log && place !== undefined ? log.readings.slice(place).map((taken) => taken.reading) : [reading]
}

/** The moves that say they come after this reading. */
export function movesAfter(reading: Block): readonly Block[] {
  const log = reading.parent && logOf(reading.parent)
  return log?.after[log.places.get(reading) ?? -1] ?? []
}

/** How the date of a move contradicts its place in the log. */
export interface Misdated {
  readonly move: Block
  /** The reading that it comes after by its place, and by its date does not; or the one that follows it, and that it is later than. */
  readonly against: Block
  readonly is: 'before' | 'later'
  /** First and last place of a reading after which it may have been made. */
  readonly from: number
  readonly to: number
}

const misdatedOf = once((drive: Block): readonly Misdated[] => {
  const { readings, moves } = logOf(drive)
  return moves.flatMap(({ move, after, done }): readonly Misdated[] => {
    const [own, next] = [readings[after], readings[after + 1]]
    if (done === undefined || !own) return []
    if (own.day !== '' && isLater(own.day, done)) {
      const last = readings.findLastIndex(({ day }) => day !== '' && !isLater(day, done))
      return [{ move, against: own.reading, is: 'before', from: last, to: after }]
    }
    if (!next || next.day === '' || !isLater(done, next.day)) return []
    const last = readings.findLastIndex(({ day }) => day !== '' && isLater(done, day))
    return [{ move, against: next.reading, is: 'later', from: after, to: last }]
  })
})

/** How the date of a move contradicts its place in the log; undefined where it does not. */
export const misdated = (move: Block): Misdated | undefined =>
  move.parent && misdatedOf(move.parent).find((one) => one.move === move)

/** After which readings of a drive it is open what was moved: a date says otherwise. After all of them where a move comes after a reading that is not
 * known, or could not be read. */
export const openAfter = once((drive: Block): readonly boolean[] => {
  const { readings, moves } = logOf(drive)
  const all = moves.some(({ move, after }) => after < 0 || move.unread.size > 0)
  const open = readings.map(() => all)
  if (!all) for (const { from, to } of misdatedOf(drive)) open.fill(true, Math.max(from, 0), to + 1)
  return open
})

/** Whether the machine was moved after a reading, so that it no longer stands as was read: a move says so, comes after a later reading, or
 * was done on a later day. */
export function movedAfter(reading: Block): boolean {
  const log = reading.parent && logOf(reading.parent)
  const place = log?.places.get(reading)
  if (!log || place === undefined) return false
  const { day } = log.readings[place] ?? { day: '' }
  return log.moves.some(
    ({ moved, after, done }) =>
      moved && (after >= place || (done !== undefined && day !== '' && isLater(done, day))),
  )
}

/** The last move of a drive that no reading follows. */
export function moveWithoutReading(drive: Block): Block | undefined {
  const { readings, moves } = logOf(drive)
  const last = readings.length - 1
  const lastDay = readings[last]?.day ?? ''
  return moves.findLast(
    ({ moved, after, done }) =>
      moved &&
      after >= 0 &&
      (after >= last || (done !== undefined && lastDay !== '' && isLater(done, lastDay))),
  )?.move
}
