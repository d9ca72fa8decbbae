import type { Foot } from '../engineering/alignment/feet.ts'
import { explainMismatch, type Mismatch } from '../engineering/alignment/mismatch.ts'
import { type InPlanes, inBothPlanes } from '../engineering/alignment/planes.ts'
import type { NotedMove } from '../engineering/alignment/slips.ts'
import type { Thread } from '../engineering/thread.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { exactly, plus, type Uncertain } from '../quantity/uncertainty.ts'
import type { FootMove } from '../vocabulary/shapes/foot-move.ts'
import { type Correction, type CorrectionOutcome, correctionOf } from './alignment.ts'
import { feetOf } from './alignment-feet.ts'
import { lastReading, movesAfter, movesBetween, movesUnsure, readingsUpTo } from './alignment-moves.ts'
import { type GaugeCircle, gaugeCircle } from './gauge-circle.ts'
import { heightOf } from './move-effect.ts'
import { type MovedInWords, movedIn } from './reading-change.ts'
import { remembered } from './remembered.ts'
import { said } from './said.ts'
import { type Adjuster, stepOf } from './steps.ts'

/** How the flange stands, in what is read there, m. */
export interface Standing {
  /** Vertical: gap at top minus gap at bottom; horizontal: starboard minus port. */
  readonly opening: InPlanes<Uncertain>
  /** + machine flange high, + to starboard. */
  readonly offset?: InPlanes<Uncertain>
}

/** A reading held against what the moves since an earlier one should have done. */
export interface Comparison {
  readonly type: 'compared'
  /** Name of the earlier reading. */
  readonly since: string
  readonly moves: readonly Block[]
  /** Its uncertainty is that of the difference to `found`: of both readings and of the moves. */
  readonly predicted: Standing
  readonly found: Standing
  readonly mismatch: Mismatch
  /** As the file has it. */
  readonly readAt: GaugeCircle
  readonly adjuster?: Correction['adjuster']
  /** Of the studs, where nuts set the feet. */
  readonly thread?: Thread
}

/** The boat, the machine or the hanging end of the shaft changed shape between two readings, so they are not held against each other. */
export interface OtherShape {
  readonly type: 'launched' | 'hauled-out' | 'heated' | 'cooled' | 'end-supported' | 'end-freed'
  readonly since: string
}

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
}

/** Readings of a drive up to this one, oldest first. */
export const logUpTo = (reading: Block, lookup: Lookup): readonly LogEntry[] =>
  readingsUpTo(reading).map((one): LogEntry => {
    const at = lookup.from(one)
    const taken = factOf(one, 'reading.taken')?.value
    const [afloat, hot] = [factOf(one, 'reading.afloat')?.value, factOf(one, 'reading.hot')?.value]
    const against = againstMoves(one, at)
    return {
      name: one.name ?? '',
      ...(taken !== undefined && { taken }),
      ...(afloat !== undefined && { afloat: afloat === 'yes' }),
      ...(hot !== undefined && { hot: hot === 'yes' }),
      outcome: correctionOf(one, at),
      moved: movesAfter(one).flatMap(movedIn),
      ...(against && { against }),
    }
  })

/** How a reading stands to what the moves since the last whole one should have done. Undefined where either cannot be worked out or contradicts
 * itself, where nothing is noted in between, and where it is open what was moved. Never throws on figures. */
export const againstMoves = remembered((reading: Block, lookup: Lookup): LogEntry['against'] => {
  try {
    return compare(reading, lookup)
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
})

function compare(reading: Block, lookup: Lookup): LogEntry['against'] {
  const now = whole(reading, lookup)
  const earlier = readingsUpTo(reading).slice(0, -1)
  const from = earlier.findLastIndex((one) => whole(one, lookup.from(one)))
  const since = earlier[from]
  const before = since && whole(since, lookup.from(since))
  if (!now || !since || !before) return undefined
  const name = since.name ?? ''
  const passed = [...earlier.slice(from), reading]
  const shape = passed.map((one, i) => shapeChanged(passed[i - 1] ?? one, one)).find(Boolean)
  if (shape) return { type: shape, since: name }

  const moves = movesBetween(since, reading)
  const bed = feetOf(lookup.near('bed'))
  if (moves.length === 0 || movesUnsure(since, reading) || !bed.ok) return undefined
  const done = movesOf(moves, bed.feet, bed.adjuster)
  const readAt = gaugeCircle(lookup.near('coupling'))
  const machine = bed.machine()
  if (!done || !readAt || !machine.ok) return undefined
  const [was, is] = [before, now].map(({ slope, offset }) => ({
    slope,
    ...(offset && { offset: offset.parts }),
  }))
  if (!was || !is) return undefined
  const explained = explainMismatch({
    feet: bed.feet,
    moves: done,
    before: was,
    after: is,
    // From two rims the slope depends on no gauge circle.
    onCircle: now.readBy.face !== 'reverse-dial' && now.readBy.face !== 'rim-dial',
  })
  if (!explained.ok) return undefined
  const planned = machine.value(done)
  const expect = (kind: 'slope' | 'offset', a: InPlanes<Uncertain>, b: InPlanes<Uncertain>) =>
    inBothPlanes((plane) =>
      plus(plus(a[plane], planned[plane][kind]), { value: 0, standard: b[plane].standard }),
    )
  const opening = (slope: InPlanes<Uncertain>): InPlanes<Uncertain> =>
    inBothPlanes((plane) => ({
      value: -readAt.diameter * slope[plane].value,
      standard: readAt.diameter * slope[plane].standard,
    }))
  return {
    type: 'compared',
    since: name,
    moves,
    predicted: {
      opening: opening(expect('slope', was.slope, is.slope)),
      ...(was.offset && is.offset && { offset: expect('offset', was.offset, is.offset) }),
    },
    found: { opening: opening(is.slope), ...(was.offset && is.offset && { offset: is.offset }) },
    mismatch: explained.value,
    readAt,
    ...(now.adjuster && { adjuster: now.adjuster }),
    ...(bed.adjuster.by === 'nut' && { thread: bed.adjuster.thread }),
  }
}

/** Whether a later reading of the drive, whole as well, counts instead. */
export const outdated = (reading: Block, lookup: Lookup): boolean => {
  const last = reading.parent && lastReading(reading.parent)
  const all = last ? readingsUpTo(last) : []
  return all.slice(all.indexOf(reading) + 1).some((later) => whole(later, lookup.from(later)))
}

/** A reading that can be worked out, of which nothing is in doubt that a comparison depends on. */
function whole(reading: Block, lookup: Lookup): Correction | undefined {
  const outcome = correctionOf(reading, lookup)
  if (!outcome.ok || outcome.value.contradictory) return undefined
  const open = outcome.value.doubts.some(({ type }) => type === 'order-unknown' || type === 'doubled-names')
  return open ? undefined : outcome.value
}

/** A reading that is silent was taken dry and cold, with the end of the shaft hanging free. */
function shapeChanged(before: Block, now: Block): OtherShape['type'] | undefined {
  const [wasAfloat, isAfloat] = [before, now].map((one) => said(one, 'reading.afloat') === 'yes')
  const [wasHot, isHot] = [before, now].map((one) => said(one, 'reading.hot') === 'yes')
  if (wasAfloat !== isAfloat) return isAfloat ? 'launched' : 'hauled-out'
  if (wasHot !== isHot) return isHot ? 'heated' : 'cooled'
  const [wasUp, isUp] = [before, now].map((one) => said(one, 'reading.parted-end') === 'supported')
  if (wasUp !== isUp) return isUp ? 'end-supported' : 'end-freed'
  return undefined
}

/** How far a move may miss what is noted, standard uncertainty: a tenth of the smallest step of the nuts and a hundredth of the way they go, and
 * 0.01 mm where a gauge or a dial measured it. Common practice, no source. */
const missed = { ofNutStep: 0.1, ofTravel: 0.01, length: 1e-5 } as const

/** What the moves together did to each foot; a foot that is not named stayed. Undefined where that is not known. */
function movesOf(
  moves: readonly Block[],
  feet: readonly Foot[],
  adjuster: Adjuster,
): readonly NotedMove[] | undefined {
  const still = { ...inBothPlanes(() => exactly(0)), byNut: 0 }
  const total = new Map(feet.map(({ name }) => [name, still]))
  for (const [name, { value }] of moves.flatMap(({ others }) => [...others])) {
    const { turn = 0, rise = 0, starboard = 0 } = value as FootMove
    const sofar = total.get(name)
    if (!sofar || (turn !== 0 && adjuster.by !== 'nut')) return undefined
    const byNut = turn !== 0 && adjuster.by === 'nut' ? turned(turn, adjuster) : exactly(0)
    total.set(name, {
      vertical: plus(plus(sofar.vertical, byNut), measured(rise)),
      horizontal: plus(sofar.horizontal, measured(starboard)),
      byNut: sofar.byNut + byNut.value,
    })
  }
  return feet.map(({ name }) => total.get(name) ?? still)
}

function turned(turn: number, nuts: Extract<Adjuster, { by: 'nut' }>): Uncertain {
  const value = heightOf(turn, nuts.thread)
  return { value, standard: Math.hypot(missed.ofNutStep * stepOf(nuts), missed.ofTravel * value) }
}

const measured = (length: number): Uncertain => ({
  value: length,
  standard: length === 0 ? 0 : missed.length,
})
