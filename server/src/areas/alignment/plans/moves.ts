import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { blockNear, idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import { blockPlan } from '../../../store/plan.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'
import {
  hasTime,
  isAnyLater,
  isLater,
  type Latest,
  latestOf,
  between as timeBetween,
} from '../../common/days.ts'

interface DatedReading {
  readonly reading: BlockId
  /** Its date, with the time where it has one; empty where none is known. */
  readonly day: string
}

interface WrittenMove {
  readonly move: BlockId
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
  readonly places: ReadonlyMap<BlockId, number>
  readonly moves: readonly WrittenMove[]
  /** The moves made after each reading. */
  readonly after: readonly (readonly BlockId[])[]
  /** Those that are only planned. */
  readonly plannedAfter: readonly (readonly BlockId[])[]
  readonly byMove: ReadonlyMap<BlockId, WrittenMove>
  /** The last place that the machine was moved after. */
  readonly lastMoved: number
  /** When it was moved last. */
  readonly latest: Latest
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
      return { reading: idOf(reading), day }
    }),
  )
  const places = new Map(readings.map(({ reading }, i) => [reading, i]))
  const named = new Map(
    readings.flatMap(({ reading }, i) => {
      const { name, path } = blockNear(drive, reading)
      return [
        [name, i],
        [path, i],
      ]
    }),
  )
  const moves = childrenOf(drive, 'move').map((move): WrittenMove => {
    const planned = isPlanned(move)
    return {
      move: idOf(move),
      after: named.get(move.about?.text) ?? -1,
      done: factOf(move, 'move.done')?.value,
      planned,
      moved: !planned && !movedNothing(move),
    }
  })
  const made = moves.filter(({ moved }) => moved)
  const after: BlockId[][] = readings.map(() => [])
  const plannedAfter: BlockId[][] = readings.map(() => [])
  for (const { move, planned, after: place } of moves) (planned ? plannedAfter : after)[place]?.push(move)
  return {
    readings,
    places,
    moves,
    after,
    plannedAfter,
    byMove: new Map(moves.map((one) => [one.move, one])),
    lastMoved: made.reduce((last, { after }) => Math.max(last, after), -1),
    latest: latestOf(made.flatMap(({ done }) => done ?? [])),
  }
})

const blocksIn = (drive: Block, ids: readonly BlockId[]): readonly Block[] =>
  ids.map((id) => blockNear(drive, id))

/** The reading at a place of the log; undefined where there is none. */
function readingAt(drive: Block, place: number): Block | undefined {
  const taken = logOf(drive).readings[place]
  return taken && blockNear(drive, taken.reading)
}

/** The reading that counts: the last by date, and of one day the last in the file. */
export const lastReading = (drive: Block): Block | undefined =>
  readingAt(drive, logOf(drive).readings.length - 1)

/** Place of the reading that a move comes after; -1 for none. */
const placeBefore = (move: Block, drive: Block): number => logOf(drive).byMove.get(idOf(move))?.after ?? -1

/** The reading a move says it comes after; the last where several have the name. */
export const readingBefore = (move: Block): Block | undefined =>
  move.parent && readingAt(move.parent, placeBefore(move, move.parent))

/** The reading taken before this one. */
export const readingAhead = (reading: Block): Block | undefined =>
  reading.parent && readingAt(reading.parent, (placeOf(reading) ?? 0) - 1)

/** The place of a reading in the log of its drive. */
const placeOf = (reading: Block): number | undefined =>
  reading.parent && logOf(reading.parent).places.get(idOf(reading))

/** The moves made from one reading to a later one of the same drive. */
export function movesBetween(from: Block, to: Block): readonly Block[] {
  const drive = to.parent
  const [first, last] = [placeOf(from), placeOf(to)]
  return !drive || first === undefined || last === undefined
    ? []
    : blocksIn(drive, logOf(drive).after.slice(first, last).flat())
}

/** The first reading after the one that a move comes after. */
export function readingFollowing(move: Block): Block | undefined {
  const after = move.parent ? placeBefore(move, move.parent) : -1
  return move.parent && after >= 0 ? readingAt(move.parent, after + 1) : undefined
}

/** All readings of a drive in the order they were taken. */
export const readingsOf = (drive: Block): readonly Block[] =>
  blocksIn(
    drive,
    logOf(drive).readings.map(({ reading }) => reading),
  )

/** The readings of its drive up to this one, oldest first. */
export function readingsUpTo(reading: Block): readonly Block[] {
  const [drive, place] = [reading.parent, placeOf(reading)]
  if (!drive || place === undefined) return [reading]
  const upTo = logOf(drive).readings.slice(0, place + 1)
  return blocksIn(
    drive,
    upTo.map((taken) => taken.reading),
  )
}

/** The moves made after this reading, as they say. */
export const movesAfter = (reading: Block): readonly Block[] =>
  reading.parent ? blocksIn(reading.parent, logOf(reading.parent).after[placeOf(reading) ?? -1] ?? []) : []

/** The moves planned from this reading: they are in the log, and move no machine until they say when they were done. */
export const plannedAfter = (reading: Block): readonly Block[] =>
  reading.parent
    ? blocksIn(reading.parent, logOf(reading.parent).plannedAfter[placeOf(reading) ?? -1] ?? [])
    : []

/** How the date of a move contradicts its place in the log. */
export interface Misdated {
  readonly move: BlockId
  /** The reading that it comes after by its place, and by its date does not; or the one that follows it, and that it is later than. */
  readonly against: BlockId
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
  move.parent && misdatedByMove(move.parent).get(idOf(move))

/** After which readings of a drive it is open what was moved: a date says otherwise, or a planned move may have been made at any time since. After all of
 * them where a move comes after a reading that is not known, or could not be read. */
export const openAfter = blockPlan((drive: Block): readonly boolean[] => {
  const { readings, moves } = logOf(drive)
  const all = moves.some(
    ({ move, after, planned }) => after < 0 || (!planned && isUnclear(blockNear(drive, move))),
  )
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
  const place = placeOf(reading)
  if (!reading.parent || place === undefined) return false
  const { readings, lastMoved, latest } = logOf(reading.parent)
  const { day } = readings[place] ?? { day: '' }
  return lastMoved >= place || (day !== '' && isAnyLater(latest, day))
}

/** The last move of a drive that no reading follows. */
export function moveWithoutReading(drive: Block): Block | undefined {
  const move = withoutReading(drive)
  return move === undefined ? undefined : blockNear(drive, move)
}

const withoutReading = blockPlan((drive: Block): BlockId | undefined => {
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
