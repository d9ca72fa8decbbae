import type { Uncertain } from '../../quantity/uncertainty.ts'
import type { Result } from '../result.ts'
import type { AngleProblem } from './angles.ts'
import { fitHarmonic, type Goodness } from './harmonic.ts'
import { type Covariance, type InPlanes, pick } from './planes.ts'
import type { Reading } from './readings.ts'

/** The machine's rim as seen from the shaft's: offset of the machine flange centre (m: vertical + high,
 * horizontal + to starboard) and mean step between the rims (m: difference of their radii). `covariance`
 * is that of [step, vertical, horizontal]. */
export type Rim = {
  readonly step: Uncertain
  readonly offset: InPlanes<Uncertain>
  readonly covariance: Covariance
}
export type RimFit = Rim & Goodness

/** Rim readings to offset: `rim(a) = c + oz cos a + oy sin a`, weighted least squares over three or more
 * angles.
 *
 * A reading (m) is how far the machine rim stands outward of the shaft rim at that angle (rad clockwise from
 * top looking forward); dial readings first go through `rimFromDial`. Errors and uncertainty as for
 * `fitFace`. Source: [derived]; four readings: oz = (R0 - R180)/2, half of the total indicator reading.
 * @example fitRim([0.06, -0.02, -0.05, 0.03].map((mm, i) => ({ angle: (i * Math.PI) / 2, value: mm / 1000
 * })), { gaugeStep: 2e-5 }).value.offset.vertical.value // ≈ 5.5e-5 */
export function fitRim(
  readings: readonly Reading[],
  { gaugeStep }: { readonly gaugeStep: number },
): Result<RimFit, AngleProblem> {
  const fit = fitHarmonic(readings, gaugeStep)
  if (!fit.ok) return fit
  const { values, covariance, goodness } = fit.value
  const offset = { vertical: pick(values, covariance, 1), horizontal: pick(values, covariance, 2) }
  return { ok: true, value: { step: pick(values, covariance, 0), offset, covariance, ...goodness } }
}
