import type { NotedMove } from '../engineering/alignment/hypothesis.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { type CorrectionOutcome, correctionOf } from './alignment.ts'
import { feetOf } from './alignment-feet.ts'
import { movesAfter, openAfter, readingsOf, readingsUpTo } from './alignment-moves.ts'
import {
  type Comparison,
  type Held,
  hasLifts,
  holdAgainst,
  type OtherShape,
  shapeChanged,
  type Worked,
} from './held-against.ts'
import { notedMoves } from './noted-moves.ts'
import { doubtsAt, inDoubt, type OpenDoubt } from './open-doubts.ts'
import { type MovedInWords, movedIn } from './reading-change.ts'
import { remembered } from './remembered.ts'

/** One reading in the log of a drive. */
export interface LogEntry {
  readonly name: string
  readonly taken?: string
  readonly afloat?: boolean
  readonly hot?: boolean
  readonly outcome: CorrectionOutcome
  /** What was done to each foot after it, in the words of the job file. */
  readonly moved: readonly MovedInWords[]
  readonly against?: Comparison | OtherShape
  /** What an earlier reading put in doubt and this one does not settle. */
  readonly stillOpen?: Comparison
}

/** Readings of a drive up to this one, oldest first. */
export const logUpTo = (reading: Block, lookup: Lookup): readonly LogEntry[] =>
  readingsUpTo(reading).map((one): LogEntry => {
    const at = lookup.from(one)
    const taken = factOf(one, 'reading.taken')?.value
    const [afloat, hot] = [factOf(one, 'reading.afloat')?.value, factOf(one, 'reading.hot')?.value]
    const { against, doubt } = standingIn(one, at)
    const stillOpen = doubt && doubt.comparison !== against ? doubt.comparison : undefined
    return {
      name: one.name ?? '',
      ...(taken !== undefined && { taken }),
      ...(afloat !== undefined && { afloat: afloat === 'yes' }),
      ...(hot !== undefined && { hot: hot === 'yes' }),
      outcome: correctionOf(one, at),
      moved: movesAfter(one).flatMap(movedIn),
      ...(against && { against }),
      ...(stillOpen && { stillOpen }),
    }
  })

/** How a reading stands in the log of its drive. */
export interface InLog {
  /** How it stands to what the moves since an earlier one should have done. Undefined where either cannot be worked out or contradicts itself, and where it
   * is open what was moved. */
  readonly against?: Comparison | OtherShape
  /** What is in doubt there, of this reading or of an earlier one. */
  readonly doubt?: OpenDoubt
  /** Later ones count instead. */
  readonly outdated: boolean
}

/** How a reading stands in the log of its drive. Never throws on figures. */
export const standingIn = (reading: Block, lookup: Lookup): InLog =>
  (reading.parent && logOf(reading.parent, lookup.from(reading.parent)).get(reading)) ?? { outdated: false }

/** The reading that the next ones are held against, and what has happened since. */
interface Since {
  readonly base: Worked
  shape: OtherShape['type'] | undefined
  /** A move is noted. */
  moved: boolean
  /** It is open what was moved. */
  unsure: boolean
  noted: readonly NotedMove[] | undefined
}

/** Readings of a drive, one after the other, each held against the last whole one that is not itself in doubt: a reading that only agrees with one in
 * doubt settles nothing. One pass: a log can be long. */
const logOf = remembered((drive: Block, lookup: Lookup): ReadonlyMap<Block, InLog> => {
  const readings = readingsOf(drive)
  const bed = unlessWrong(() => feetOf(lookup.near('bed')))
  const job = lookup.ofKind('job')[0]
  const launched = job && factOf(job, 'job.launched')?.value
  const log = new Map<Block, InLog>()
  let since: Since | undefined
  let doubts: readonly OpenDoubt[] = []
  let liftsAt = -1
  for (const [place, reading] of readings.entries()) {
    const previous = readings[place - 1]
    if (since && previous) {
      const moves = movesAfter(previous)
      const shape = unlessWrong(() => [shapeChanged(previous, reading, launched)])
      since.shape ??= shape?.[0]
      since.moved ||= moves.length > 0
      since.unsure ||= !shape || openAfter(drive)[place - 1] !== false
      since.noted = bed?.ok && since.noted ? notedMoves(moves, bed, since.noted) : undefined
    }
    if (hasLifts(reading)) liftsAt = place
    const now = whole(reading, lookup.from(reading))
    if (!now) {
      log.set(reading, { outdated: false })
      continue
    }
    const held = since && compared(since, now, lookup)
    const against =
      since?.shape === undefined
        ? held?.comparison
        : ({ type: since.shape, since: since.base.reading.name ?? '' } as const)
    doubts = doubtsAt(doubts, held, { place, liftsAt, moved: since?.moved ?? false })
    const doubt = doubts.at(-1)
    log.set(reading, { ...(against && { against }), ...(doubt && { doubt }), outdated: false })
    if (!held || !inDoubt(held.comparison))
      since = {
        base: now,
        shape: undefined,
        moved: false,
        unsure: false,
        noted: bed?.ok ? notedMoves([], bed) : undefined,
      }
  }
  const last = readings.findLastIndex((reading) => whole(reading, lookup.from(reading)))
  for (const reading of readings.slice(0, Math.max(last, 0)))
    log.set(reading, { ...log.get(reading), outdated: true })
  return log
})

function compared({ base, shape, unsure, noted }: Since, now: Worked, lookup: Lookup): Held | undefined {
  if (shape !== undefined || unsure || !noted) return undefined
  return unlessWrong(() => holdAgainst(base, now, noted, lookup))
}

/** Undefined where a figure is none, or a fact cannot be used as written: other findings say so. */
function unlessWrong<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** A reading that can be worked out, of which nothing is in doubt that a comparison depends on. */
function whole(reading: Block, lookup: Lookup): Worked | undefined {
  const outcome = correctionOf(reading, lookup)
  if (!outcome.ok || outcome.value.contradictory) return undefined
  const open = outcome.value.doubts.some(({ type }) => type === 'order-unknown' || type === 'doubled-names')
  return open ? undefined : { reading, correction: outcome.value }
}
