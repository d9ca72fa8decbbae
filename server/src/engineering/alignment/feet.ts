import type { Uncertain } from '../../quantity/uncertainty.ts'
import { coordinate } from '../guard.ts'
import type { Result } from '../result.ts'
import { type InPlanes, inBothPlanes } from './planes.ts'
import { type Line, lineAt, type OffsetBasis, type Pose } from './pose.ts'

/** A foot: x forward of the shaft-side coupling face, y to starboard of the shaft axis, m. */
export type Foot = { readonly name: string; readonly x: number; readonly y: number }

/** Feet that leave the machine's tilt open: all at one station along the shaft (no slope can be set, only
 * offset), or in one oblique line, where slope cannot be told from roll. `feet` are their names. */
export type FeetProblem = {
  readonly type: 'feet-at-one-station' | 'feet-in-line'
  readonly feet: readonly string[]
}

/** Feet nearer than this (m) along an axis count as one station. */
export const oneStation = 1e-3

/** Whether values (m) lie so near to each other that no slope can be taken between them.
 * @example atOneStation([0.18, 0.18]) // true */
export const atOneStation = (values: readonly number[]): boolean =>
  values.length === 0 || Math.max(...values) - Math.min(...values) < oneStation

/** Feet by station along the shaft, from aft, each by its index; those less than a millimetre apart stand at one, at the `x` (m) of its first.
 * @example byStation([{ x: 0.6 }, { x: 0.2 }, { x: 0.6 }]) // [{ x: 0.2, feet: [1] }, { x: 0.6, feet: [0, 2] }] */
export function byStation(
  feet: readonly { readonly x: number }[],
): readonly { readonly x: number; readonly feet: readonly number[] }[] {
  const groups: { readonly x: number; readonly feet: number[] }[] = []
  for (const [i, { x }] of [...feet.entries()].sort(([, a], [, b]) => a.x - b.x)) {
    const last = groups.at(-1)
    if (last && x - last.x < oneStation) last.feet.push(i)
    else groups.push({ x, feet: [i] })
  }
  return groups
}

/** How a foot has to move, m: vertical + raise, - lower; horizontal + to starboard, - to port. */
export type FootCorrection = Foot & InPlanes<Uncertain>

/** Corrections, and whether they bring the offset right as well: with an unknown offset they remove the
 * slope alone, about the coupling centre as it is, and the machine cannot be called aligned. */
export type FootCorrections = {
  readonly feet: readonly FootCorrection[]
  readonly offsetBasis: OffsetBasis
}

/** Where the axis should be (m and rad, relative to the shaft axis). Zero unless thermal growth, an
 * unsupported shaft end or movement afloat asks for something else. */
export type Target = InPlanes<{ readonly offset: number; readonly slope: number }>

/** The axis of the machine in line with the shaft's. */
const onTheShaft: Target = { vertical: { offset: 0, slope: 0 }, horizontal: { offset: 0, slope: 0 } }

/** Foot corrections `dz = -((oz - oz*) + (tv - tv*) x)`, `dy = -((oy - oy*) + (th - th*) x)`; starred
 * values are the target.
 *
 * Offset read: as written, uncertainty from offset and slope. Pilot: the machine pivots about it, offset 0 ±
 * 0, and the target's offset is left aside, as the flanges cannot part. Unknown: the slope term alone, and the target's offset is left aside. y does not enter: moving by these
 * leaves the roll as it is. m, rad. All feet at one station is returned as a problem; a bad number is a
 * OutOfRange. Source: [derived]; agrees with Bloch & Geitner's face-and-rim and reverse-indicator examples.
 * @example footCorrections(poseFromFace({ radius: 0.055, gap: exactly(2e-3), slope: { vertical:
 * exactly(-2e-3), horizontal: exactly(0) }, covariance: [] }, 'pilot'), [{ name: 'aft', x: 0.18, y: 0 }, {
 * name: 'fwd', x: 0.56, y: 0 }]).value.feet[1].vertical.value // ≈ 1.12e-3 */
export function footCorrections(
  pose: Pose,
  feet: readonly Foot[],
  target: Target = onTheShaft,
): Result<FootCorrections, FeetProblem> {
  for (const foot of feet) coordinate(`y of foot ${foot.name}`, foot.y)
  if (atOneStation(feet.map((foot) => coordinate(`x of foot ${foot.name}`, foot.x))))
    return { ok: false, problem: { type: 'feet-at-one-station', feet: feet.map((f) => f.name) } }
  const correction = (line: Line, aim: Target['vertical'], x: number): Uncertain => {
    const offset = pose.offsetBasis === 'read' ? coordinate('target offset', aim.offset) : 0
    const now = lineAt(line, x)
    return { value: offset + coordinate('target slope', aim.slope) * x - now.value, standard: now.standard }
  }
  return {
    ok: true,
    value: {
      feet: feet.map((foot) => ({
        ...foot,
        ...inBothPlanes((plane) => correction(pose[plane], target[plane], foot.x)),
      })),
      offsetBasis: pose.offsetBasis,
    },
  }
}
