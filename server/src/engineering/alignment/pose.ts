import { exactly, type Uncertain } from '../../quantity/uncertainty.ts'
import { coordinate, inRange, uncertain } from '../guard.ts'
import type { Face } from './face.ts'
import { type InPlanes, inBothPlanes } from './planes.ts'
import type { Rim } from './rim.ts'

/** A straight line in one plane: offset (m) at the shaft-side coupling face, slope (rad) going forward, and
 * how their errors go together. */
export type Line = {
  readonly offset: Uncertain
  readonly slope: Uncertain
  readonly covariance: number
}

/** Where the offset comes from: read; held at zero by a pilot (spigot) about which the machine pivots; or
 * not known. */
export type OffsetBasis = 'read' | 'pilot' | 'unknown'

/** The machine axis relative to the shaft axis, seen in both planes. With an unknown offset the lines hold
 * zero there: no claim. */
export type Pose = InPlanes<Line> & { readonly offsetBasis: OffsetBasis }

/** Pose from a face (slopes rad, + far end up, + to starboard) and a rim (offsets m, + up, + to starboard), or from the face alone: with a
 * pilot ('pilot'), which holds the offset at zero, or with the offset not read ('unknown'), which puts zero where nothing is claimed.
 *
 * `rimAt`: where the rim was read, m forward of the coupling face (within 100 m, else OutOfRange). The offset at the face is o = o(rimAt) −
 * t rimAt. Face and rim are read apart, so their errors are independent: u² = u²(o) + (rimAt u(t))², and the covariance of offset and slope is
 * −rimAt u²(t). A pilot is taken as free of error. Source: straight line [derived]; JCGM 100 (GUM) 5.1.2 and 5.2.2 for the uncertainty.
 * @example poseFromFace({ radius: 0.055, gap: exactly(2e-3), slope: { vertical: exactly(-2e-3),
 * horizontal: exactly(0) }, covariance: [] }, 'unknown').vertical.slope.value // ≈ -2e-3 */
export function poseFromFace(face: Face, rim: Rim | 'pilot' | 'unknown', { rimAt = 0 } = {}): Pose {
  const x = typeof rim === 'string' ? 0 : coordinate('x of the rim reading', rimAt)
  const offset = typeof rim === 'string' ? { vertical: exactly(0), horizontal: exactly(0) } : rim.offset
  const line = (plane: keyof InPlanes<Line>): Line => {
    const read = uncertain('offset', offset[plane])
    const slope = uncertain('slope', face.slope[plane])
    return {
      offset: {
        value: read.value - slope.value * x,
        standard: Math.hypot(read.standard, slope.standard * x),
      },
      slope,
      covariance: 0 - x * slope.standard ** 2,
    }
  }
  return { ...inBothPlanes(line), offsetBasis: typeof rim === 'string' ? rim : 'read' }
}

/** Offsets (m) of the machine axis from the shaft axis, read in the plane at `x` (m forward of the
 * shaft-side coupling face). */
export type OffsetPlane = { readonly x: number; readonly offset: InPlanes<Uncertain> }

/** Pose from offsets read in two planes (reverse indicator): the axis is the straight line through both.
 * OutOfRange when the planes are less than 1 mm apart. A dial carried by the machine first has its signs
 * reversed (`rimFromDial`). Source: Bloch & Geitner, reverse-indicator method: correction at distance p
 * from plane S = (oS - oA) p/c - oS.
 * @example poseFromTwoPlanes({ x: 0, offset: inBothPlanes(() => exactly(12e-3)) }, { x: 14, offset:
 * inBothPlanes(() => exactly(7e-3)) }).vertical.slope.value // ≈ -3.5714e-4 */
export function poseFromTwoPlanes(S: OffsetPlane, A: OffsetPlane): Pose {
  const c = coordinate('x of plane', A.x) - coordinate('x of plane', S.x)
  inRange('distance between the planes (m)', Math.abs(c), 1e-3, 200)
  const line = (plane: keyof InPlanes<Line>): Line => {
    const s = uncertain('offset', S.offset[plane])
    const a = uncertain('offset', A.offset[plane])
    const [ofS, ofA] = [A.x / c, -S.x / c]
    return {
      offset: {
        value: ofS * s.value + ofA * a.value,
        standard: Math.hypot(ofS * s.standard, ofA * a.standard),
      },
      slope: { value: (a.value - s.value) / c, standard: Math.hypot(a.standard, s.standard) / Math.abs(c) },
      covariance: (ofA * a.standard ** 2 - ofS * s.standard ** 2) / c,
    }
  }
  return { ...inBothPlanes(line), offsetBasis: 'read' }
}

/** Where a line is at `x` (m forward of the coupling face, − aft of it; within 100 m, else OutOfRange): o + t x, m, + up or + to starboard as the
 * line is. Uncertainty u² = u²(o) + 2 x cov(o, t) + x² u²(t); no less than 0, which rounding could make it. Source: straight line; JCGM 100 (GUM)
 * 5.2.2.
 * @example lineAt({ offset: exactly(0.001), slope: exactly(0.002), covariance: 0 }, 0.5).value // 0.002 */
export function lineAt({ offset, slope, covariance }: Line, x: number): Uncertain {
  coordinate('x', x)
  const square = offset.standard ** 2 + 2 * x * covariance + (x * slope.standard) ** 2
  return { value: offset.value + slope.value * x, standard: Math.sqrt(Math.max(0, square)) }
}
