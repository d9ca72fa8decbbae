import type { Uncertain } from '../../quantity/uncertainty.ts'
import { inRange } from '../guard.ts'
import type { Result } from '../result.ts'
import type { AngleProblem } from './angles.ts'
import { fitHarmonic, type Goodness } from './harmonic.ts'
import { type Covariance, type InPlanes, pick, variance } from './planes.ts'
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

/** How far (m) the machine rim stands outward of the shaft rim at an angle (rad).
 * @example rimAt({ step: exactly(0), offset: { vertical: exactly(1e-4), horizontal: exactly(0) },
 * covariance: [] }, Math.PI).value // ≈ -1e-4 */
export function rimAt(rim: Rim, angle: number): Uncertain {
  const a = inRange('angle (rad)', angle, -1000, 1000)
  const j = [1, Math.cos(a), Math.sin(a)]
  const value =
    rim.step.value + Math.cos(a) * rim.offset.vertical.value + Math.sin(a) * rim.offset.horizontal.value
  return { value, standard: Math.sqrt(variance(j, rim.covariance)) }
}
