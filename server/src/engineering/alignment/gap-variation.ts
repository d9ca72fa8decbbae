import type { Uncertain } from '../../quantity/uncertainty.ts'
import { size } from '../guard.ts'
import type { Face } from './face.ts'

/** 95 % point of chi-square with two degrees of freedom, -2 ln 0.05. */
const chiSquare95 = -2 * Math.log(0.05)

/** Gap variation of the fitted face: greatest less least gap all round, D |slope|, m. **This is the figure
 * to judge**: it sees a tilt that lies between the angles read, and uses all readings. `diameter` m, by
 * default the one read on; give the flange diameter to judge against a limit stated for the flange.
 *
 * Uncertainty: that of the slope along its own direction, where a direction can be told. Where it cannot
 * (zero slope lies inside the 95 % region of the two components) a noisy vector is mostly too long and the
 * usual propagation breaks down: U (k = 2) is then the half width of that region in its widest direction, so
 * that value ± U reaches down to zero. It never comes out as nothing. What is missed near zero is mostly a
 * true variation below the value, the safe side. [derived]
 * @example gapVariation({ radius: 0.055, gap: exactly(2e-3), slope: { vertical: exactly(-2e-3),
 * horizontal: exactly(0) }, covariance: [] }).value // ≈ 2.2e-4 */
export function gapVariation(
  face: Face,
  { diameter = 2 * face.radius }: { readonly diameter?: number } = {},
): Uncertain {
  const D = size('diameter', diameter)
  const v = face.slope.vertical.value
  const h = face.slope.horizontal.value
  const a = face.covariance[1]?.[1] ?? 0
  const b = face.covariance[1]?.[2] ?? 0
  const d = face.covariance[2]?.[2] ?? 0
  const slope = Math.hypot(v, h)
  const directionless = d * v * v - 2 * b * v * h + a * h * h < chiSquare95 * (a * d - b * b)
  const along = slope > 0 ? Math.sqrt(Math.max(0, a * v * v + 2 * b * v * h + d * h * h)) / slope : 0
  const widest = Math.sqrt((a + d) / 2 + Math.hypot((a - d) / 2, b))
  return { value: D * slope, standard: D * (directionless ? (widest * Math.sqrt(chiSquare95)) / 2 : along) }
}

/** Limit of gap variation when nothing is stated: 0.001 of the flange diameter, m; a slope of 1 mrad. An
 * assumption, to be shown as one. Judge it with the variation at the flange diameter. Source: common
 * practice, public boat-class alignment guides (0.001 in per inch).
 * @example assumedGapLimit(0.125) // 1.25e-4 */
export const assumedGapLimit = (flangeDiameter: number): number =>
  0.001 * size('flange diameter', flangeDiameter)
