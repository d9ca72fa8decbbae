import { type Closure, closure } from '../engineering/alignment/closure.ts'
import { gapsFromDial, rimFromDial } from '../engineering/alignment/dial.ts'
import { type Face, type FaceFit, fitFace } from '../engineering/alignment/face.ts'
import type { Goodness } from '../engineering/alignment/harmonic.ts'
import { type Pose, poseFromFace } from '../engineering/alignment/pose.ts'
import { gather, type Reading } from '../engineering/alignment/readings.ts'
import { fitRim, type Rim, type RimFit } from '../engineering/alignment/rim.ts'
import { faceWithoutRunOut, rimWithoutRunOut } from '../engineering/alignment/run-out.ts'
import { faceAndRimFromTwoPlanes, rimAtFace } from '../engineering/alignment/two-planes.ts'
import { type Block, factOf } from '../job/model.ts'
import type { Uncertain } from '../quantity/uncertainty.ts'
import { type AlignmentFault, asFault, blaming, fault } from './alignment-fault.ts'
import { type Repeats, repeatsApart } from './alignment-repeats.ts'
import { said } from './said.ts'

/** A fact of a reading that holds values at places round the flange. */
export type RoundFact =
  | 'gaps'
  | 'gaps-half-turn'
  | 'offsets'
  | 'offsets-half-turn'
  | 'face-dial'
  | 'rim-dial'
  | 'reverse-dial'

/** What a fit says of itself that a verdict hangs on. */
type Trust = Pick<Goodness, 'gaugeStep' | 'gaugeExplains'>

/** A face or a rim as read, in whichever way. */
interface Seen<T> {
  readonly value: T & Trust
  /** The fact it was read into. */
  readonly by: RoundFact
  readonly closure: Closure
  readonly repeats: Repeats | undefined
  /** Swing of the gap, or of the rim, as the flange turns, m; where the flange was turned. */
  readonly runOut: Uncertain | undefined
}

/** How a machine was found to stand, whichever way it was read. */
export interface Stand {
  readonly face: Seen<Face>
  readonly rim: Seen<Rim> | undefined
  readonly pose: Pose
}

export type StandOutcome =
  | { readonly ok: true; readonly value: Stand }
  | { readonly ok: false; readonly fault: AlignmentFault }

const refused = (problem: AlignmentFault): { readonly ok: false; readonly fault: AlignmentFault } => ({
  ok: false,
  fault: problem,
})

/** The facts a face is read into, and those a rim is. */
export const facesBy = ['gaps', 'face-dial'] as const
export const rimsBy = ['offsets', 'rim-dial'] as const

/** The ways a face, or a rim, was read in, where those are more than one. */
export const readTwice = (reading: Block): readonly (readonly RoundFact[])[] =>
  [[...facesBy, ...(said(reading, 'reading.rim-dial') ? (['reverse-dial'] as const) : [])], rimsBy]
    .map((ways) => ways.filter((way) => said(reading, `reading.${way}`)))
    .filter((ways) => ways.length > 1)

const spoken: Readonly<Record<RoundFact, string>> = {
  gaps: 'gaps',
  'gaps-half-turn': 'gaps read after half a turn',
  offsets: 'offsets',
  'offsets-half-turn': 'offsets read after half a turn',
  'face-dial': 'dial readings of the face',
  'rim-dial': 'dial readings of the rim',
  'reverse-dial': 'readings of the reverse dial',
}

/** `gaps`, `dial readings of the face`. */
export const sayRound = (of: RoundFact): string => spoken[of]

/** What a reading says about how the machine stands. `radius`, m, of the circle on which faces are read and the gap variation is judged.
 * Throws Unreadable and RangeError. */
export function standOf(
  reading: Block,
  { radius, pilot }: { readonly radius: number; readonly pilot: boolean },
  assumptions: string[],
): StandOutcome {
  const twice = readTwice(reading)[0]
  if (twice)
    return refused(
      fault(
        'read-twice',
        `The reading has ${twice.join(' and ')}: which of them counts cannot be told. Make two readings of them.`,
      ),
    )
  if (said(reading, 'reading.reverse-dial') && said(reading, 'reading.rim-dial'))
    return byTwoPlanes(reading, radius, assumptions)
  const face = faceOf(reading, radius)
  if (!face.ok) return face
  const rim = rimOf(reading, assumptions)
  if (rim && !rim.ok) return rim
  if (!rim) {
    assumptions.push(
      pilot
        ? 'the pilot of the coupling holds the faces concentric: no offset was read, it is taken as zero'
        : 'the offset was not read: the moves take out the slope alone and leave the coupling centre where it is, so the machine is not shown to be aligned',
    )
    return {
      ok: true,
      value: {
        face: face.value,
        rim: undefined,
        pose: poseFromFace(face.value.value, pilot ? 'pilot' : 'unknown'),
      },
    }
  }
  const { x, seen } = rim
  const pose = poseFromFace(face.value.value, seen.value, { rimAt: x })
  const atFace = { ...seen, value: rimAtFace({ x, rim: seen.value }, face.value.value) }
  return { ok: true, value: { face: face.value, rim: atFace, pose } }
}

type SeenOutcome<T> =
  | { readonly ok: true; readonly value: Seen<T> }
  | { readonly ok: false; readonly fault: AlignmentFault }

const gaugeOf = (reading: Block, rims: boolean): number | undefined =>
  (rims ? said(reading, 'reading.offset-gauge') : undefined) ?? said(reading, 'reading.gauge')

/** Closure, repeats and the fit of one set of values. */
function look<Fit extends Trust>(
  reading: Block,
  by: RoundFact,
  values: readonly Reading[],
  gaugeStep: number,
  fit: (values: readonly Reading[]) => ReturnType<typeof fitFace> | ReturnType<typeof fitRim>,
): SeenOutcome<Fit> {
  const tested = blaming(
    factOf(reading, `reading.${by}`),
    'More than 60 places round the flange cannot be worked with.',
    () => closure(gather(values, gaugeStep)),
  )
  const fitted = fit(values)
  if (!fitted.ok) return refused(asFault(fitted.problem, sayRound(by)))
  return {
    ok: true,
    value: {
      value: fitted.value as unknown as Fit,
      by,
      closure: tested,
      repeats: repeatsApart(values, gaugeStep),
      runOut: undefined,
    },
  }
}
