import type { Uncertain } from '../../quantity/uncertainty.ts'
import { size } from '../guard.ts'
import type { Result } from '../result.ts'
import type { AngleProblem } from './angles.ts'
import { fitHarmonic, type Goodness } from './harmonic.ts'
import { type Covariance, type InPlanes, pick } from './planes.ts'
import type { Reading } from './readings.ts'

/** The machine's flange face as seen from the shaft's: mean gap (m) and slope of the machine axis (rad:
 * vertical + far end high, horizontal + far end to starboard). `covariance` is that of [gap, vertical
 * slope, horizontal slope]. */
export type Face = {
  /** Radius (m) at which the gaps are read. */
  readonly radius: number
  readonly gap: Uncertain
  readonly slope: InPlanes<Uncertain>
  readonly covariance: Covariance
}
export type FaceFit = Face & Goodness

/** The readings give a slope (rad) beyond what small angles allow: a reading or the radius is wrong by far.
 */
export type SlopeProblem = {
  readonly type: 'slope-too-large'
  readonly slope: number
  readonly limit: number
}

/** Slope (rad) up to which gaps are linear in slope to 0.5 %. */
const largestSlope = 0.1

/** Face gaps to slope: `gap(a) = g0 - r (tv cos a + th sin a)`, weighted least squares over three or more
 * angles.
 *
 * Gaps m (+ open; only differences matter), angles rad clockwise from top looking forward, `radius` where the
 * gauge goes in, m. Loose at the top gives tv < 0: the far end of the machine is low. Uncertainty from gauge
 * step and scatter, whichever is larger (`fitHarmonic`); it does not hold errors of the angles, which fade as
 * the slope does. Too few angles or too great a slope is returned as a problem; a bad number throws OutOfRange.
 * Source: plane in the frame of the shaft flange [derived]; four gaps: tv = (g180 - g0)/D, th = (g270 -
 * g90)/D.
 * @example fitFace([1.92, 1.8, 1.66, 1.78].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000
 * })), { radius: 0.055, gaugeStep: 2e-5 }).value.slope.vertical.value // ≈ -2.364e-3 */
export function fitFace(
  readings: readonly Reading[],
  { radius, gaugeStep }: { readonly radius: number; readonly gaugeStep: number },
): Result<FaceFit, AngleProblem | SlopeProblem> {
  const r = size('gauge radius', radius)
  const fit = fitHarmonic(readings, gaugeStep)
  if (!fit.ok) return fit
  const scale = [1, -1 / r, -1 / r]
  const values = fit.value.values.map((v, i) => v * (scale[i] ?? 0))
  const covariance = fit.value.covariance.map((line, i) =>
    line.map((v, j) => v * (scale[i] ?? 0) * (scale[j] ?? 0)),
  )
  const slope = { vertical: pick(values, covariance, 1), horizontal: pick(values, covariance, 2) }
  const steep = Math.hypot(slope.vertical.value, slope.horizontal.value)
  if (steep > largestSlope)
    return { ok: false, problem: { type: 'slope-too-large', slope: steep, limit: largestSlope } }
  return {
    ok: true,
    value: { radius, gap: pick(values, covariance, 0), slope, covariance, ...fit.value.goodness },
  }
}
