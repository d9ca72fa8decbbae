import { exactly } from '../../quantity/uncertainty.ts'
import { coordinate, size } from '../guard.ts'
import type { Face } from './face.ts'
import { type Covariance, inBothPlanes } from './planes.ts'
import { type Pose, poseFromTwoPlanes } from './pose.ts'
import type { Rim } from './rim.ts'

/** A rim and the plane (m forward of the shaft-side coupling face) in which it was read. */
export type RimAt = { readonly x: number; readonly rim: Rim }

/** What a face and a rim in the plane of the shaft-side coupling face would show, and the pose they belong to. */
export type FaceAndRim = { readonly pose: Pose; readonly face: Face; readonly rim: Rim }

/** Sum of two covariances of vertical and horizontal, each times a factor; row and column of the constant left at zero. */
const blended = (a: Covariance, ofA: number, b: Covariance, ofB: number): Covariance =>
  a.map((row, i) => row.map((v, j) => (i === 0 || j === 0 ? 0 : ofA * v + ofB * (b[i]?.[j] ?? 0))))

/** Rims read in two planes (reverse indicator, signs as `rimFromDial` gives them) as the face and the rim they stand for, so that they are
 * judged like any other. `radius` (m): that of the circle on which the gap variation is judged. The mean gap and the mean step are not
 * seen, they are 0. Planes less than 1 mm apart: OutOfRange. Source: `poseFromTwoPlanes`.
 * @example faceAndRimFromTwoPlanes([{ x: 0, rim: fitRim([2, 1, 0, 1].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000 })), {
 * gaugeStep: 1e-5 }).value }, { x: 0.2, rim: fitRim([1, 1, 1, 1].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000 })), {
 * gaugeStep: 1e-5 }).value }], 0.05).face.slope.vertical.value // ≈ -5e-3 */
export function faceAndRimFromTwoPlanes([S, A]: readonly [RimAt, RimAt], radius: number): FaceAndRim {
  const pose = poseFromTwoPlanes({ x: S.x, offset: S.rim.offset }, { x: A.x, offset: A.rim.offset })
  const c = A.x - S.x
  const each = 1 / c ** 2
  return {
    pose,
    face: {
      radius: size('radius', radius),
      gap: exactly(0),
      slope: inBothPlanes((plane) => pose[plane].slope),
      covariance: blended(S.rim.covariance, each, A.rim.covariance, each),
    },
    rim: {
      step: exactly(0),
      offset: inBothPlanes((plane) => pose[plane].offset),
      covariance: blended(S.rim.covariance, A.x ** 2 * each, A.rim.covariance, S.x ** 2 * each),
    },
  }
}

/** A rim read in a plane `x` (m) forward of the coupling face, carried back along the slope of the axis to the coupling face: offset less
 * slope times x. Face and rim read apart. [derived]
 * @example rimAtFace({ x: 0.1, rim: fitRim([1, 1, 1, 1].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000 })), { gaugeStep: 1e-5
 * }).value }, { radius: 0.055, gap: exactly(2e-3), slope: { vertical: exactly(2e-3), horizontal: exactly(0) }, covariance: []
 * }).offset.vertical.value // ≈ -2e-4 */
export function rimAtFace<R extends Rim>({ x, rim }: { readonly x: number; readonly rim: R }, face: Face): R {
  coordinate('x of plane', x)
  if (x === 0) return rim
  return {
    ...rim,
    offset: inBothPlanes((plane) => ({
      value: rim.offset[plane].value - face.slope[plane].value * x,
      standard: Math.hypot(rim.offset[plane].standard, face.slope[plane].standard * x),
    })),
    covariance: rim.covariance.map((row, i) =>
      row.map((v, j) => (i === 0 || j === 0 ? v : v + x ** 2 * (face.covariance[i]?.[j] ?? 0))),
    ),
  }
}
