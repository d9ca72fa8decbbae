import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { blockPlan } from '../../../store/plan.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'
import { anyLater, hasTime, isLater, between as timeBetween } from '../../common/days.ts'

interface DatedReading {
  readonly reading: Block
  /** Its date, with the time where it has one; empty where none is known. */
  readonly day: string
}

interface WrittenMove {
  readonly move: Block
  /** Place in the order of the readings of the one it comes after; -1 for none. */
  readonly after: number
  readonly done: string | undefined
  readonly planned: boolean
  /** Some foot was moved, as far as is known. */
  readonly moved: boolean
}

/** The readings of a drive in the order they were taken, and its moves as they are written. */
interface ReadingLog {
  readonly readings: readonly DatedReading[]
  readonly places: ReadonlyMap<Block, number>
  readonly moves: readonly WrittenMove[]
  /** The moves made after each reading. */
  readonly after: readonly (readonly Block[])[]
  /** Those that are only planned. */
  readonly plannedAfter: readonly (readonly Block[])[]
  readonly byBlock: ReadonlyMap<Block, WrittenMove>
  /** The last place that the machine was moved after. */
  readonly lastMoved: number
  /** Whether it was moved later than a day. */
  readonly isMovedLater: (than: string) => boolean
}

/** What is said of the feet or the date could not be read. */
const isUnclear = ({ unread }: Block): boolean => [...unread].some((fact) => fact !== 'by')

/** Whether a move does not say when it was done, whatever it says of the feet: it may not have been made. A date that cannot be read is one. */
export const isPlanned = ({ facts, unread }: Block): boolean => !facts.has('done') && !unread.has('done')

/** Whether every foot it names was left as it was. What could not be read may be a move. */
const movedNothing = (move: Block): boolean =>
  move.others.size > 0 &&
  !isUnclear(move) &&
  [...move.others.values()].every(({ value }) =>
    Object.values(value as FootMove).every((by: number | undefined) => !by),
  )

/** In the order they were taken; those of one day by the clock where each has a time, else as they are written. */
function inOrder(readings: readonly DatedReading[]): readonly DatedReading[] {
  const dayOf = ({ day }: DatedReading): string => day.slice(0, 10)
  const untimed = new Set(readings.filter(({ day }) => !hasTime(day)).map(dayOf))
  return readings.toSorted((a, b) => {
    if (dayOf(a) !== dayOf(b)) return dayOf(a) < dayOf(b) ? -1 : 1
    return untimed.has(dayOf(a)) ? 0 : timeBetween(b.day, a.day)
  })
}

/** Sorted out once a drive. A reading without a date goes by the one written before it. */
const logOf = blockPlan((drive: Block): ReadingLog => {
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
  const moves = childrenOf(drive, 'move').map((move): WrittenMove => {
    const planned = isPlanned(move)
    return {
      move,
      after: named.get(move.about?.text) ?? -1,
      done: factOf(move, 'move.done')?.value,
      planned,
      moved: !planned && !movedNothing(move),
    }
  })
  const made = moves.filter(({ moved }) => moved)
  const after: Block[][] = readings.map(() => [])
  const plannedAfter: Block[][] = readings.map(() => [])
  for (const { move, planned, after: place } of moves) (planned ? plannedAfter : after)[place]?.push(move)
  return {
    readings,
    places: new Map(readings.map(({ reading }, i) => [reading, i])),
    moves,
    after,
    plannedAfter,
    byBlock: new Map(moves.map((made) => [made.move, made])),
    lastMoved: made.reduce((last, { after }) => Math.max(last, after), -1),
    isMovedLater: anyLater(made.flatMap(({ done }) => done ?? [])),
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

/** The first reading after the one that a move comes after. */
export function readingFollowing(move: Block): Block | undefined {
  const log = move.parent && logOf(move.parent)
  const after = log?.byBlock.get(move)?.after ?? -1
  return after < 0 ? undefined : log?.readings[after + 1]?.reading
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

/** The moves made after this reading, as they say. */
export function movesAfter(reading: Block): readonly Block[] {
  const log = reading.parent && logOf(reading.parent)
  return log?.after[log.places.get(reading) ?? -1] ?? []
}

/** The moves planned from this reading: they are in the log, and move no machine until they say when they were done. */
export function plannedAfter(reading: Block): readonly Block[] {
  const log = reading.parent && logOf(reading.parent)
  return log?.plannedAfter[log.places.get(reading) ?? -1] ?? []
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

/** The last place of a reading of which this holds, which only holds up to the day after a date: zones are less than a day apart. */
function lastUpTo(date: string, readings: readonly DatedReading[], holds: (day: string) => boolean): number {
  const limit = new Date(Date.parse(date.slice(0, 10)) + 2 * 86_400_000).toISOString().slice(0, 10)
  let low = 0
  let high = readings.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((readings[middle]?.day ?? '') < limit) low = middle + 1
    else high = middle
  }
  let place = low - 1
  while (place >= 0 && !holds(readings[place]?.day ?? '')) place -= 1
  return place
}

const misdatedOf = blockPlan((drive: Block): readonly Misdated[] => {
  const { readings, moves } = logOf(drive)
  return moves.flatMap(({ move, after, done }): readonly Misdated[] => {
    const [own, next] = [readings[after], readings[after + 1]]
    if (done === undefined || !own) return []
    if (own.day !== '' && isLater(own.day, done)) {
      const last = lastUpTo(done, readings, (day) => day !== '' && !isLater(day, done))
      return [{ move, against: own.reading, is: 'before', from: last, to: after }]
    }
    if (!next || next.day === '' || !isLater(done, next.day)) return []
    const last = lastUpTo(done, readings, (day) => day !== '' && isLater(done, day))
    return [{ move, against: next.reading, is: 'later', from: after, to: last }]
  })
})

const misdatedByMove = blockPlan((drive: Block) => new Map(misdatedOf(drive).map((one) => [one.move, one])))

/** How the date of a move contradicts its place in the log; undefined where it does not. */
export const misdated = (move: Block): Misdated | undefined =>
  move.parent && misdatedByMove(move.parent).get(move)

/** After which readings of a drive it is open what was moved: a date says otherwise, or a planned move may have been made at any time since. After all of
 * them where a move comes after a reading that is not known, or could not be read. */
export const openAfter = blockPlan((drive: Block): readonly boolean[] => {
  const { readings, moves } = logOf(drive)
  const all = moves.some(({ move, after, planned }) => after < 0 || (!planned && isUnclear(move)))
  if (all) return readings.map(() => true)
  const first = moves.reduce(
    (least, { planned, after }) => (planned ? Math.min(least, after) : least),
    readings.length,
  )
  // How many more dates contradict the log at each place than at the one before.
  const more = readings.map(() => 0)
  for (const { from, to } of misdatedOf(drive)) {
    if (to < from) continue
    more[Math.max(from, 0)] = (more[Math.max(from, 0)] ?? 0) + 1
    if (to + 1 < more.length) more[to + 1] = (more[to + 1] ?? 0) - 1
  }
  let contradicting = 0
  return more.map((by, place) => {
    contradicting += by
    return contradicting > 0 || place >= first
  })
})

/** Whether the machine was moved after a reading, so that it no longer stands as was read: a move says so, comes after a later reading, or
 * was done on a later day. */
export function movedAfter(reading: Block): boolean {
  const log = reading.parent && logOf(reading.parent)
  const place = log?.places.get(reading)
  if (!log || place === undefined) return false
  const { day } = log.readings[place] ?? { day: '' }
  return log.lastMoved >= place || (day !== '' && log.isMovedLater(day))
}

/** The last move of a drive that no reading follows. */
export const moveWithoutReading = blockPlan((drive: Block): Block | undefined => {
  const { readings, moves } = logOf(drive)
  const last = readings.length - 1
  const lastDay = readings[last]?.day ?? ''
  return moves.findLast(
    ({ moved, after, done }) =>
      moved &&
      after >= 0 &&
      (after >= last || (done !== undefined && lastDay !== '' && isLater(done, lastDay))),
  )?.move
})
