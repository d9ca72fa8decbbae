import { reaches } from './compare.ts'
import { inRange } from './guard.ts'

/** A point of a curve, SI: `value` where the curve is at `at`. */
export interface CurvePoint {
  readonly at: number
  readonly value: number
}

/** Value of a curve at `at`, same units as its points, whose `at` rise strictly: on the straight line between the two points around it. Undefined
 * beyond the first and the last point: nothing is known of a curve there. OutOfRange for points that are not finite. Source: linear interpolation,
 * definition.
 * @example betweenPoints([{ at: 0, value: 0 }, { at: 2, value: 10 }], 1) // 5 */
export function betweenPoints(points: readonly CurvePoint[], at: number): number | undefined {
  for (const point of points) {
    inRange('place of a point', point.at, -1e12, 1e12)
    inRange('value of a point', point.value, -1e12, 1e12)
  }
  const over = points.findIndex((point) => reaches(point.at, at))
  const [low, high] = [points[over - 1], points[over]]
  if (!high) return undefined
  if (reaches(at, high.at)) return high.value
  return low && low.value + ((high.value - low.value) * (at - low.at)) / (high.at - low.at)
}
