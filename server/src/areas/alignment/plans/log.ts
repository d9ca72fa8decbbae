import type { NotedMove } from '../../../engineering/alignment/hypothesis.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { type CorrectionOutcome, correctionOf } from './correction.ts'
import { feetOf } from './feet.ts'
import type { KnownBesides } from './known-besides.ts'
import { softLimit } from './lifts.ts'
import { type MovedInWords, movedIn } from './moved-in-words.ts'
import { movesAfter, openAfter, plannedAfter, readingsOf, readingsUpTo } from './moves.ts'
import { notedMoves } from './noted-moves.ts'
import { doubtsAt, inDoubt, type OpenDoubt } from './open-doubts.ts'
import {
  type Comparison,
  type CorrectedReading,
  compareReadings,
  type OtherShape,
  type ReadingComparison,
  shapeChanged,
  shapeOf,
} from './reading-comparison.ts'

/** One reading in the log of a drive. */
export interface LogEntry {
  readonly name: string
  readonly taken?: string
  readonly afloat?: boolean
  readonly hot?: boolean
  readonly outcome: CorrectionOutcome
  /** What was done to each foot after it, in the words of the job file. */
  readonly moved: readonly MovedInWords[]
  /** What is planned for each foot after it, and not said to be done. */
  readonly planned: readonly MovedInWords[]
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
    const { against, doubt } = readingInLog(one, at)
    const stillOpen = doubt && doubt.comparison !== against ? doubt.comparison : undefined
    return {
      name: one.name ?? '',
      ...(taken !== undefined && { taken }),
      ...(afloat !== undefined && { afloat: afloat === 'yes' }),
      ...(hot !== undefined && { hot: hot === 'yes' }),
      outcome: correctionOf(one, at),
      moved: movesAfter(one).flatMap(movedIn),
      planned: plannedAfter(one).flatMap(movedIn),
      ...(against && { against }),
      ...(stillOpen && { stillOpen }),
    }
  })

/** How a reading stands in the log of its drive. */
export interface ReadingInLog {
  /** How it stands to what the moves since an earlier one should have done. Undefined where either cannot be worked out or contradicts itself, and where it
   * is open what was moved. */
  readonly against?: Comparison | OtherShape
  /** What is in doubt there, of this reading or of an earlier one. */
  readonly doubt?: OpenDoubt
  /** Later ones count instead. */
  readonly outdated: boolean
}

/** How a reading stands in the log of its drive. Never throws on figures. */
export const readingInLog = (reading: Block, lookup: Lookup): ReadingInLog =>
  (reading.parent && logOf(reading.parent, lookup.from(reading.parent)).get(idOf(reading))) ?? {
    outdated: false,
  }

/** A reading that the next ones of its shape are held against, and what has happened since. */
interface ReferenceReading extends CorrectedReading {
  readonly place: number
  readonly figures: string
  /** Place of the reading that the last moves come before; undefined where none is noted. */
  movedAt: number | undefined
  /** It is open what was moved. */
  unsure: boolean
  noted: readonly NotedMove[] | undefined
}

/** The bases of a drive, one for each shape: hot or cold, with the end of the shaft free or supported. */
class ReferenceReadings {
  readonly #byShape = new Map<string, ReferenceReading>()
  #latest: ReferenceReading | undefined
  /** How the boat changed since the latest. */
  #floated: OtherShape['type'] | undefined
  readonly #launched: string | undefined

  constructor(launched: string | undefined) {
    this.#launched = launched
  }

  /** From one reading to the next. A boat that was launched and hauled out again may stand otherwise ashore. */
  pass(previous: Block, now: Block, change: (base: ReferenceReading) => void): void {
    const shape = unlessWrong(() => [shapeChanged(previous, now, this.#launched)])
    for (const base of this.#byShape.values()) {
      change(base)
      base.unsure ||= !shape
    }
    const [type] = shape ?? []
    if (type !== 'launched' && type !== 'hauled-out') return
    this.#byShape.clear()
    this.#floated = type
  }

  /** How a soft foot held the machine before it was mended nobody knows. */
  forget(): void {
    this.#byShape.clear()
    this.#latest = undefined
  }

  set(base: ReferenceReading): void {
    this.#byShape.set(keyOf(base.reading), base)
    this.#latest = base
    this.#floated = undefined
  }

  /** The base of its shape, or how it differs from the latest. */
  of(now: Block): ReferenceReading | OtherShape | undefined {
    const base = this.#byShape.get(keyOf(now))
    const from = base ?? this.#latest
    if (!from) return undefined
    const type =
      (base ? undefined : this.#floated) ?? unlessWrong(() => shapeChanged(from.reading, now, this.#launched))
    return type === undefined ? base : { type, since: from.reading.name ?? '' }
  }
}

const keyOf = (reading: Block): string => unlessWrong(() => shapeOf(reading)) ?? '?'

/** The figures of face and rim as they are written, place by place. */
const figuresOf = ({ reading, correction }: CorrectedReading): string =>
  JSON.stringify(
    Object.values(correction.readBy).map((by) => [
      by,
      ...(statedFact(reading, `reading.${by}`) ?? [])
        .map(({ angle, value }) => [angle, value])
        .toSorted(inPlace),
    ]),
  )

const inPlace = ([a = 0, v = 0]: readonly number[], [b = 0, w = 0]: readonly number[]): number =>
  a - b || v - w

/** Whether soft feet of a reading were, or may have been, moved after it. */
function isMended(reading: Block, lookup: Lookup): boolean {
  const outcome = correctionOf(reading, lookup)
  const soft = outcome.ok ? (outcome.value.soft?.soft ?? []) : []
  const moves = [...movesAfter(reading), ...plannedAfter(reading)]
  return soft.length > 0 && moves.some(({ others }) => soft.some((foot) => others.has(foot)))
}

/** Readings of a drive, one after the other, each held against the last whole one of its shape that is not itself in doubt: a reading that only agrees
 * with one in doubt settles nothing. One pass: a log can be long. */
const logOf = plan((drive: Block, lookup: Lookup): ReadonlyMap<BlockId, ReadingInLog> => {
  const readings = readingsOf(drive)
  const feet = unlessWrong(() => feetOf(lookup.near('bed')))
  const bed = feet?.ok ? feet.value : undefined
  const job = lookup.ofKind('job')[0]
  const bases = new ReferenceReadings(job && factOf(job, 'job.launched')?.value)
  const log = new Map<BlockId, ReadingInLog>()
  let doubts: readonly OpenDoubt[] = []
  const firmAt = new Map<string, number>()
  const firstWith = new Map<string, { readonly place: number; readonly name: string }>()
  for (const [place, reading] of readings.entries()) {
    const previous = readings[place - 1]
    if (previous) {
      const moves = movesAfter(previous)
      bases.pass(previous, reading, (base) => {
        if (moves.length > 0) base.movedAt = place
        base.unsure ||= openAfter(drive)[place - 1] !== false
        base.noted = bed && base.noted ? notedMoves(moves, bed, base.noted) : undefined
      })
      if (isMended(previous, lookup.from(previous))) bases.forget()
    }
    for (const { name, lift } of unlessWrong(() => statedFact(reading, 'reading.lifts')) ?? [])
      firmAt.set(name, lift <= softLimit ? place : -1)
    const now = trustedReading(reading, lookup.from(reading))
    if (!now) {
      log.set(idOf(reading), { outdated: false })
      continue
    }
    const figures = figuresOf(now)
    const found = bases.of(reading)
    const [base, other] = found && 'type' in found ? [undefined, found] : [found, undefined]
    const copied = firstWith.get(figures)
    const held =
      base &&
      compared(base, now, lookup, {
        isFirm: (foot) => (firmAt.get(foot) ?? -1) >= (base.movedAt ?? place),
        ...(copied && copied.place < base.place && base.figures !== figures && { copyOf: copied.name }),
      })
    const against = other ?? held?.comparison
    doubts = doubtsAt(doubts, held, { place, firmAt, moved: base?.movedAt !== undefined })
    const doubt = doubts.at(-1)
    log.set(idOf(reading), { ...(against && { against }), ...(doubt && { doubt }), outdated: false })
    if (!held || !inDoubt(held.comparison)) {
      const noted = bed ? notedMoves([], bed) : undefined
      bases.set({ ...now, place, figures, movedAt: undefined, unsure: false, noted })
    }
    if (!copied) firstWith.set(figures, { place, name: reading.name ?? '' })
  }
  const last = readings.findLastIndex((reading) => trustedReading(reading, lookup.from(reading)))
  for (const reading of readings.slice(0, Math.max(last, 0)))
    log.set(idOf(reading), { ...log.get(idOf(reading)), outdated: true })
  return log
})

function compared(
  base: ReferenceReading,
  now: CorrectedReading,
  lookup: Lookup,
  known: KnownBesides,
): ReadingComparison | undefined {
  const { unsure, noted } = base
  if (unsure || !noted) return undefined
  return unlessWrong(() => compareReadings(base, now, noted, known, lookup))
}

/** Undefined where a figure is none, or a fact cannot be used as written: other findings say so. */
function unlessWrong<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof OutOfRange) return undefined
    throw error
  }
}

/** A reading that can be worked out, of which nothing is in doubt that a comparison depends on. With a soft foot the machine stands otherwise than it
 * will when all are tight. */
function trustedReading(reading: Block, lookup: Lookup): CorrectedReading | undefined {
  const outcome = correctionOf(reading, lookup)
  if (!outcome.ok || outcome.value.contradictory || outcome.value.soft) return undefined
  const open = outcome.value.doubts.some(({ type }) => type === 'order-unknown' || type === 'doubled-names')
  return open ? undefined : { reading, correction: outcome.value }
}
