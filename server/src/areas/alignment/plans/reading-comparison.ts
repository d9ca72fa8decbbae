import type { NotedMove } from '../../../engineering/alignment/hypothesis.ts'
import { explainMismatch, type Mismatch, type Readings } from '../../../engineering/alignment/mismatch.ts'
import { type InPlanes, inBothPlanes } from '../../../engineering/alignment/planes.ts'
import type { Thread } from '../../../engineering/thread.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { plus, type Uncertain } from '../../../quantity/uncertainty.ts'
import { blockNear, idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { solve } from '../../../store/solve.ts'
import { isLater } from '../../common/days.ts'
import { statedFact } from '../../common/stated-fact.ts'
import type { Correction } from './correction.ts'
import { feetOf, machineOn } from './feet.ts'
import { type GaugeCircle, gaugeCircle } from './gauge-circle.ts'
import { type KnownBesides, withKnown } from './known-besides.ts'
import { movesBetween } from './moves.ts'

/** How the flange stands, in what is read there, m. */
export interface FlangeMisalignment {
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
  /** Name of the later one. */
  readonly at: string
  readonly from: BlockId
  readonly to: BlockId
  /** Whether any move is noted in between, and how many feet the moves were to raise or lower. */
  readonly noted: boolean
  readonly raised: number
  /** Its uncertainty is that of the difference to `found`: of both readings and of the moves. */
  readonly predicted: FlangeMisalignment
  readonly found: FlangeMisalignment
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

/** A reading, and what was worked out from it. */
export interface CorrectedReading {
  readonly reading: Block
  readonly correction: Correction
}

/** What was compared, and in what. */
export interface ReadingComparison {
  readonly comparison: Comparison
  readonly readings: Readings
}

const explain = solve(explainMismatch)

const openingOf = (slope: InPlanes<Uncertain>, { diameter }: GaugeCircle): InPlanes<Uncertain> =>
  inBothPlanes((plane) => ({
    value: -diameter * slope[plane].value,
    standard: diameter * slope[plane].standard,
  }))

/** How the flange stands as read; undefined where no circle is known. Throws Unreadable. */
export function flangeMisalignment(
  { slope, offset }: Correction,
  lookup: Lookup,
): FlangeMisalignment | undefined {
  const readAt = gaugeCircle(lookup.near('coupling'))
  return readAt && { opening: openingOf(slope, readAt), ...(offset && { offset: offset.parts }) }
}

/** A reading against an earlier one and the moves noted in between, foot by foot in the order of the bed. Undefined where the feet set no slope or no
 * circle is known. Throws Unreadable, and OutOfRange on figures that are none. */
export function compareReadings(
  earlier: CorrectedReading & { readonly movedAt: number | undefined },
  later: CorrectedReading,
  moves: readonly NotedMove[],
  known: KnownBesides,
  lookup: Lookup,
): ReadingComparison | undefined {
  const feet = feetOf(lookup.near('bed'))
  const readAt = gaugeCircle(lookup.near('coupling'))
  if (!feet.ok || !readAt) return undefined
  const bed = feet.value
  const machine = machineOn(bed)
  if (!machine.ok) return undefined
  const [was, is] = [axisReading(earlier.correction), axisReading(later.correction)]
  const { face } = later.correction.readBy
  const flange = statedFact(lookup.near('coupling'), 'coupling.flange-diameter')
  const readings: Readings = {
    feet: bed.feet,
    moves,
    before: was,
    after: is,
    // From two rims the slope depends on no gauge circle.
    onCircle: face !== 'reverse-dial' && face !== 'rim-dial',
    ...(flange !== undefined && { largestCircle: flange / readAt.diameter }),
  }
  const explained = explain(readings)
  if (!explained.ok) return undefined
  const planned = machine.value(moves)
  const expect = (kind: 'slope' | 'offset', a: InPlanes<Uncertain>, b: InPlanes<Uncertain>) =>
    inBothPlanes((plane) =>
      plus(plus(a[plane], planned[plane][kind]), { value: 0, standard: b[plane].standard }),
    )
  const { adjuster } = later.correction
  const comparison: Comparison = {
    type: 'compared',
    since: earlier.reading.name ?? '',
    at: later.reading.name ?? '',
    from: idOf(earlier.reading),
    to: idOf(later.reading),
    noted: earlier.movedAt !== undefined,
    // The errors of moves add up, also where the moves do not.
    raised: moves.filter(({ vertical }) => vertical.standard > 0).length,
    predicted: {
      opening: openingOf(expect('slope', was.slope, is.slope), readAt),
      ...(was.offset && is.offset && { offset: expect('offset', was.offset, is.offset) }),
    },
    found: {
      opening: openingOf(is.slope, readAt),
      ...(was.offset && is.offset && { offset: is.offset }),
    },
    mismatch: withKnown(explained.value, known),
    readAt,
    ...(adjuster && { adjuster }),
    ...(bed.adjuster.by === 'nut' && { thread: bed.adjuster.thread }),
  }
  return { comparison, readings }
}

/** The moves between the readings that were compared. They are not kept: readings that are all held against the first would each keep all moves before
 * them. */
export const movesCompared = ({ from, to }: Comparison, near: Block): readonly Block[] =>
  movesBetween(blockNear(near, from), blockNear(near, to))

const axisReading = ({ slope, offset }: Correction): Readings['before'] => ({
  slope,
  ...(offset && { offset: offset.parts }),
})

/** Whether the boat was launched between two readings, of which one does not say whether it was taken afloat. */
function launchedBetween(before: Block, now: Block, launched: string | undefined): boolean {
  const [was, is] = [before, now].map((one) => factOf(one, 'reading.taken')?.value)
  const silent = [before, now].some((one) => statedFact(one, 'reading.afloat') === undefined)
  return (
    silent &&
    launched !== undefined &&
    was !== undefined &&
    is !== undefined &&
    isLater(is, launched) &&
    !isLater(was, launched)
  )
}

/** What changed shape from one reading to the next. A reading that is silent was taken dry and cold, with the end of the shaft hanging free, but where
 * the boat was launched meanwhile. `launched`: the day the job says. Throws Unreadable. */
export function shapeChanged(before: Block, now: Block, launched?: string): OtherShape['type'] | undefined {
  if (launchedBetween(before, now, launched)) return 'launched'
  const [wasAfloat, isAfloat] = [before, now].map((one) => statedFact(one, 'reading.afloat') === 'yes')
  const [wasHot, isHot] = [before, now].map((one) => statedFact(one, 'reading.hot') === 'yes')
  if (wasAfloat !== isAfloat) return isAfloat ? 'launched' : 'hauled-out'
  if (wasHot !== isHot) return isHot ? 'heated' : 'cooled'
  const [wasUp, isUp] = [before, now].map((one) => statedFact(one, 'reading.parted-end') === 'supported')
  if (wasUp !== isUp) return isUp ? 'end-supported' : 'end-freed'
  return undefined
}

/** Readings of one shape have the same, as long as the boat is not launched or hauled out. Throws Unreadable. */
export const shapeOf = (reading: Block): string =>
  [
    statedFact(reading, 'reading.hot') === 'yes',
    statedFact(reading, 'reading.parted-end') === 'supported',
  ].join()
