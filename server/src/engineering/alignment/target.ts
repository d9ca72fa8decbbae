import { exactly, type Uncertain } from '../../quantity/uncertainty.ts'
import { inRange } from '../guard.ts'
import type { Result } from '../result.ts'
import type { Face } from './face.ts'
import type { FeetProblem, Foot, Target } from './feet.ts'
import { type InPlanes, inBothPlanes } from './planes.ts'
import type { Pose } from './pose.ts'
import { rigidMove } from './rigid-move.ts'
import type { Rim } from './rim.ts'

const offsetIn = (name: string, m: number): number => inRange(`${name} (m)`, m, -0.05, 0.05)
const slopeIn = (name: string, rad: number): number => inRange(`${name} (rad)`, rad, -0.1, 0.1)

/** The sum of targets: small movements of a rigid machine add up. Offsets m within ±50 mm, slopes rad within ±0.1, else OutOfRange. No
 * target at all is a straight line through the shaft.
 * @example sumOfTargets([shaftEndTarget({ droop: 8e-5, slope: 3e-4 }), shaftEndTarget({ droop: 1e-5, slope: 0 })]).vertical.offset // ≈ 9e-5 */
export const sumOfTargets = (targets: readonly Target[]): Target =>
  inBothPlanes((plane) => ({
    offset: targets.reduce((sum, t) => sum + offsetIn('target offset', t[plane].offset), 0),
    slope: targets.reduce((sum, t) => sum + slopeIn('target slope', t[plane].slope), 0),
  }))

/** Where the machine is to stand while the coupling is parted, as seen from the shaft end that hangs: by `droop` (m, + hanging) high, and by
 * `slope` (rad, + coupling end hanging) far end high, so that joining lifts the shaft end to its line. The gap is then wider at the bottom
 * by slope x diameter. Source: US Army TM 55-1905-222-14, alignment of propeller shaft (flange position and slope with bolts out); signs
 * [derived].
 * @example shaftEndTarget({ droop: 8e-5, slope: 3e-4 }).vertical // { offset: 8e-5, slope: 3e-4 } */
export const shaftEndTarget = ({
  droop,
  slope,
}: {
  readonly droop: number
  readonly slope: number
}): Target => ({
  vertical: { offset: offsetIn('droop', droop), slope: slopeIn('slope of the shaft end', slope) },
  horizontal: { offset: 0, slope: 0 },
})

/** Where the machine is to stand before it moves by `movement` (m, rad, of the machine against the shaft: + up, + to starboard) of itself:
 * the same the other way. [derived]
 * @example targetBefore(shaftEndTarget({ droop: 1e-4, slope: 0 })).vertical.offset // -1e-4 */
export const targetBefore = (movement: Target): Target =>
  inBothPlanes((plane) => ({
    offset: 0 - offsetIn('movement', movement[plane].offset),
    slope: 0 - slopeIn('movement in slope', movement[plane].slope),
  }))

/** Where the cold machine is to stand when each foot rises by its growth (m, + up) on the way to working heat: that much low. The rise of
 * the axis is that of the rigid machine nearest to the feet. Feet at one station, or in one oblique line, are returned as a problem.
 * Source: `rigidMove`. [derived]
 * @example targetCold([{ name: 'aft', x: 0.2, y: 0, growth: 1e-4 }, { name: 'fwd', x: 0.6, y: 0, growth: 2e-4
 * }]).value.vertical.slope // ≈ -2.5e-4 */
export function targetCold(
  feet: readonly (Foot & { readonly growth: number })[],
): Result<Target, FeetProblem> {
  const rise = rigidMove(
    feet.map((foot) => ({
      ...foot,
      vertical: exactly(offsetIn(`growth of foot ${foot.name}`, foot.growth)),
      horizontal: exactly(0),
    })),
  )
  if (!rise.ok) return rise
  const { offset, slope } = rise.value.vertical
  return {
    ok: true,
    value: targetBefore({
      vertical: { offset: offset.value, slope: slope.value },
      horizontal: { offset: 0, slope: 0 },
    }),
  }
}

/** How a machine stands against its target: everything less the target, which is taken as exact. Limits are then held against what is left,
 * and moves bring that to zero. An offset that is not known makes no claim and stays so.
 * @example againstTarget({ face: { radius: 0.055, gap: exactly(2e-3), slope: { vertical: exactly(2e-3), horizontal: exactly(0) },
 * covariance: [] }, pose: poseFromFace({ radius: 0.055, gap: exactly(2e-3), slope: { vertical: exactly(2e-3), horizontal: exactly(0) },
 * covariance: [] }, 'unknown') }, shaftEndTarget({ droop: 0, slope: 5e-4 })).face.slope.vertical.value // ≈ 1.5e-3 */
export function againstTarget<F extends Face, R extends Rim>(
  stand: { readonly face: F; readonly rim?: R | undefined; readonly pose: Pose },
  target: Target,
): { readonly face: F; readonly rim: R | undefined; readonly pose: Pose } {
  const { face, rim, pose } = stand
  const less = (of: InPlanes<Uncertain>, what: 'offset' | 'slope') =>
    inBothPlanes((plane) => ({ ...of[plane], value: of[plane].value - target[plane][what] }))
  const unknown = pose.offsetBasis === 'unknown'
  const offset = less(
    inBothPlanes((plane) => pose[plane].offset),
    'offset',
  )
  const slope = less(
    inBothPlanes((plane) => pose[plane].slope),
    'slope',
  )
  const line = (plane: keyof InPlanes<unknown>) => ({
    ...pose[plane],
    offset: unknown ? pose[plane].offset : offset[plane],
    slope: slope[plane],
  })
  return {
    face: { ...face, slope: less(face.slope, 'slope') },
    rim: rim && { ...rim, offset: less(rim.offset, 'offset') },
    pose: { ...inBothPlanes(line), offsetBasis: pose.offsetBasis },
  }
}
