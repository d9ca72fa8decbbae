import type { AngleProblem } from '../../../engineering/alignment/angles.ts'
import { maxPlaces } from '../../../engineering/alignment/closure.ts'
import { type DialOptions, gapsFromDial, rimFromDial } from '../../../engineering/alignment/dial.ts'
import { type Face, type FaceFit, fitFace, type SlopeProblem } from '../../../engineering/alignment/face.ts'
import type { Goodness } from '../../../engineering/alignment/harmonic.ts'
import { type Pose, poseFromFace } from '../../../engineering/alignment/pose.ts'
import { gather, type Reading } from '../../../engineering/alignment/readings.ts'
import { fitRim, type Rim, type RimFit } from '../../../engineering/alignment/rim.ts'
import {
  faceWithoutRunOut,
  rimWithoutRunOut,
  type WithoutRunOut,
} from '../../../engineering/alignment/run-out.ts'
import { faceAndRimFromTwoPlanes, rimAtFace } from '../../../engineering/alignment/two-planes.ts'
import type { Result } from '../../../engineering/result.ts'
import type { Block } from '../../../job/model.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import { failed, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { type AlignmentOutcome, asFault, factAt, fault, WrongFact } from './fault.ts'
import { type Repeats, repeatsApart } from './repeats.ts'

/** A fact of a reading that holds values at places round the flange. */
export type RoundFact =
  | 'gaps'
  | 'gaps-half-turn'
  | 'offsets'
  | 'offsets-half-turn'
  | 'face-dial'
  | 'rim-dial'
  | 'reverse-dial'

/** What a fit says of itself that a verdict depends on. */
type Trust = Pick<Goodness, 'gaugeStep' | 'gaugeExplains' | 'closure'>

/** A face or a rim as read, in whichever way. */
interface FittedReading<T> {
  readonly value: T & Trust
  /** The fact it was read into. */
  readonly by: RoundFact
  readonly repeats: Repeats | undefined
  /** Swing of the gap, or of the rim, as the flange turns, m; where the flange was turned. */
  readonly runOut: Uncertain | undefined
}

/** How a machine was found to stand, whichever way it was read. */
export interface MeasuredAlignment {
  readonly face: FittedReading<Face>
  readonly rim: FittedReading<Rim> | undefined
  readonly pose: Pose
}

/** The ways a face, or a rim, was read in, where those are more than one. Two rim dials, with or without a place each, are a way of their own. */
function readTwice(reading: Block): readonly (readonly RoundFact[])[] {
  const are = (ways: readonly RoundFact[]) => ways.filter((way) => statedFact(reading, `reading.${way}`))
  return [are(['gaps', 'face-dial', 'reverse-dial']), are(['offsets', 'rim-dial'])].filter(
    (ways) => ways.length > 1,
  )
}

const roundFactNames: Readonly<Record<RoundFact, string>> = {
  gaps: 'gaps',
  'gaps-half-turn': 'gaps read after half a turn',
  offsets: 'offsets',
  'offsets-half-turn': 'offsets read after half a turn',
  'face-dial': 'dial readings of the face',
  'rim-dial': 'dial readings of the rim',
  'reverse-dial': 'readings of the reverse dial',
}

/** `gaps`, `dial readings of the face`. */
export const formatRoundFact = (of: RoundFact): string => roundFactNames[of]

/** What a reading says about how the machine stands. `radius`, m, of the circle on which faces are read and the gap variation is judged.
 * Throws Unreadable and OutOfRange. */
export function measuredAlignment(
  reading: Block,
  circle: { readonly radius: number; readonly pilot: boolean },
  assumptions: string[],
): AlignmentOutcome<MeasuredAlignment> {
  const measured = alignmentAsRead(reading, circle, assumptions)
  if (measured.ok) assumptions.push(...untestedClosure(measured.value))
  return measured
}

/** Three places always lie in one plane, whatever was misread. */
const untestedClosure = ({ face, rim }: MeasuredAlignment): readonly string[] =>
  [face, rim].flatMap((fitted) =>
    fitted?.value.closure.state === 'untestable'
      ? [
          `none of the ${formatRoundFact(fitted.by)} was misread: three places were read, and only a fourth could show it`,
        ]
      : [],
  )

function alignmentAsRead(
  reading: Block,
  { radius, pilot }: { readonly radius: number; readonly pilot: boolean },
  assumptions: string[],
): AlignmentOutcome<MeasuredAlignment> {
  const twice = readTwice(reading)[0]
  if (twice)
    return failed(
      fault(
        'read-twice',
        `The reading has ${twice.join(' and ')}, so it is not clear which counts. Make two readings of them.`,
      ),
    )
  if (statedFact(reading, 'reading.reverse-dial')) return byTwoPlanes(reading, radius, assumptions)
  const face = faceOf(reading, radius)
  if (!face.ok) return face
  const rim = rimOf(reading, assumptions)
  if (rim && !rim.ok) return rim
  if (!rim) {
    assumptions.push(
      pilot
        ? 'the pilot of the coupling holds the faces concentric: no offset was read, and zero is used'
        : 'the offset was not read: the moves correct the slope only and leave the coupling centre where it is, so they do not prove that the machine is aligned',
    )
    return ok({
      face: face.value,
      rim: undefined,
      pose: poseFromFace(face.value.value, pilot ? 'pilot' : 'unknown'),
    })
  }
  const { x, value: read } = rim
  const pose = poseFromFace(face.value.value, read.value, { rimAt: x })
  const atFace = { ...read, value: rimAtFace({ x, rim: read.value }, face.value.value) }
  return ok({ face: face.value, rim: atFace, pose })
}

/** Repeats and the fit of one set of values. */
function fitReading<T extends Trust>(
  reading: Block,
  by: RoundFact,
  { values, gaugeStep }: { readonly values: readonly Reading[]; readonly gaugeStep: number },
  fitting: () => Result<T, AngleProblem | SlopeProblem>,
): AlignmentOutcome<FittedReading<T>> {
  if (gather(values, gaugeStep).length > maxPlaces)
    throw new WrongFact(`At most ${maxPlaces} places round the flange can be used.`, factAt(reading, by))
  const fitted = fitting()
  if (!fitted.ok) return failed(asFault(fitted.problem, formatRoundFact(by)))
  const repeats = repeatsApart(values, gaugeStep)
  return ok({ value: fitted.value, by, repeats, runOut: undefined })
}

/** Both positions of the flange as one: what is said of the closure and the repeats is that of the worse. */
function bothPositions<T extends Trust>(
  one: FittedReading<T>,
  two: FittedReading<T>,
  { mean, runOut }: WithoutRunOut<T>,
): FittedReading<T> {
  const apart = one.repeats ? one : two
  return {
    value: mean,
    by: mean.closure === one.value.closure ? one.by : two.by,
    repeats: apart.repeats,
    runOut,
  }
}

function faceOf(reading: Block, radius: number): AlignmentOutcome<FittedReading<FaceFit>> {
  const gaugeStep = statedFact(reading, 'reading.gauge')
  const gaps = statedFact(reading, 'reading.gaps')
  const dial = statedFact(reading, 'reading.face-dial')
  const again = statedFact(reading, 'reading.gaps-half-turn')
  if (gaugeStep === undefined || !(gaps ?? dial))
    return failed(
      fault('no-gaps', 'The reading needs gaps, or the faces by dial, and the smallest step of the gauge.'),
    )
  const seen = (by: RoundFact, values: readonly Reading[]) =>
    fitReading(reading, by, { values, gaugeStep }, () => fitFace(values, { radius, gaugeStep }))
  if (!gaps) return seen('face-dial', gapsFromDial(dial ?? []))
  const [one, two] = [seen('gaps', gaps), again && seen('gaps-half-turn', again)]
  if (!one.ok || !two) return one
  if (!two.ok) return two
  return ok(bothPositions(one.value, two.value, faceWithoutRunOut(one.value.value, two.value.value)))
}

/** The rim, and the plane it was read in; undefined where none was read. */
function rimOf(
  reading: Block,
  assumptions: string[],
): (AlignmentOutcome<FittedReading<RimFit>> & { readonly x: number }) | undefined {
  const gaugeStep = statedFact(reading, 'reading.offset-gauge') ?? statedFact(reading, 'reading.gauge')
  const offsets = statedFact(reading, 'reading.offsets')
  const again = statedFact(reading, 'reading.offsets-half-turn')
  if (gaugeStep === undefined) return undefined
  const seen = (by: RoundFact, values: readonly Reading[]) =>
    fitReading(reading, by, { values, gaugeStep }, () => fitRim(values, { gaugeStep }))
  if (offsets) {
    const [one, two] = [seen('offsets', offsets), again && seen('offsets-half-turn', again)]
    if (!one.ok || !two) return { ...one, x: 0 }
    if (!two.ok) return { ...two, x: 0 }
    const without = rimWithoutRunOut(one.value.value, two.value.value)
    return { ...ok(bothPositions(one.value, two.value, without)), x: 0 }
  }
  const dial = statedFact(reading, 'reading.rim-dial')
  if (!dial) return undefined
  const x = statedFact(reading, 'reading.rim-dial-at') ?? 0
  return { ...seen('rim-dial', rimFromDial(dial, dialOf(reading, assumptions))), x }
}

/** Which half carries the rim dial, and how far its bar hangs. */
function dialOf(reading: Block, assumptions: string[]): Required<DialOptions> {
  const carriedBy = statedFact(reading, 'reading.dial-carried-by')
  const droop = statedFact(reading, 'reading.bar-droop')
  if (carriedBy === undefined) assumptions.push('the shaft carries the dial: dial-carried-by is not stated')
  if (droop === undefined) assumptions.push('the bar of the rim dial does not droop: bar-droop is not stated')
  return { carriedBy: carriedBy ?? 'shaft', droop: droop ?? 0 }
}

/** Reverse indicator: the offset in two planes. */
function byTwoPlanes(
  reading: Block,
  radius: number,
  assumptions: string[],
): AlignmentOutcome<MeasuredAlignment> {
  const at = [
    statedFact(reading, 'reading.rim-dial-at'),
    statedFact(reading, 'reading.reverse-dial-at'),
  ] as const
  const gaugeStep = statedFact(reading, 'reading.offset-gauge') ?? statedFact(reading, 'reading.gauge')
  const [x, reverseX] = at
  if (!statedFact(reading, 'reading.rim-dial'))
    return failed(fault('no-gaps', 'The reverse dial needs the other dial, rim-dial, beside it.'))
  if (gaugeStep === undefined || x === undefined || reverseX === undefined || Math.abs(x - reverseX) < 1e-3)
    return failed(
      fault(
        'no-gaps',
        'Two rim dials need rim-dial-at and reverse-dial-at, in two different planes, and the smallest step of the dials.',
      ),
    )
  const dial = dialOf(reading, assumptions)
  const other = { ...dial, carriedBy: dial.carriedBy === 'shaft' ? 'machine' : 'shaft' } as const
  const seen = (by: 'rim-dial' | 'reverse-dial', options: DialOptions) => {
    const values = rimFromDial(statedFact(reading, `reading.${by}`) ?? [], options)
    return fitReading(reading, by, { values, gaugeStep }, () => fitRim(values, { gaugeStep }))
  }
  if (statedFact(reading, 'reading.bar-droop') !== undefined)
    assumptions.push('both dial bars droop by the same: one bar-droop is stated for both')
  const [one, two] = [seen('rim-dial', dial), seen('reverse-dial', other)]
  if (!one.ok) return one
  if (!two.ok) return two
  const { pose, face, rim } = faceAndRimFromTwoPlanes(
    [
      { x, rim: one.value.value },
      { x: reverseX, rim: two.value.value },
    ],
    radius,
  )
  // Both verdicts depend on both dials.
  const trust = {
    gaugeStep,
    gaugeExplains: one.value.value.gaugeExplains && two.value.value.gaugeExplains,
  }
  return ok({
    face: { ...two.value, value: { ...face, ...trust, closure: two.value.value.closure } },
    rim: { ...one.value, value: { ...rim, ...trust, closure: one.value.value.closure } },
    pose,
  })
}
