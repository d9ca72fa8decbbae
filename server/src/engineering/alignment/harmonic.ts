import { rectangular } from '../../quantity/uncertainty.ts'
import type { Result } from '../result.ts'
import { type AngleProblem, angleProblem } from './angles.ts'
import { type Closure, closure } from './closure.ts'
import { leastSquares } from './least-squares.ts'
import { gather, type Reading } from './readings.ts'

/** How well readings fit, common to faces and rims. Residuals (m) are reading less fit, in the order of the
 * readings. */
export type Goodness = {
  readonly gaugeStep: number
  readonly residuals: readonly number[]
  /** Angles read beyond the three that a fit needs. */
  readonly degreesOfFreedom: number
  /** Absent when no angle is redundant. */
  readonly reducedChiSquare?: number
  /** Whether the gauge step alone explains how far repeats and redundant readings disagree: only then does
   * a finer gauge help. */
  readonly gaugeExplains: boolean
  /** Of two positions of the flange, that of the one that does not close. */
  readonly closure: Closure
}

export type Harmonic = {
  /** c, p, q of c + p cos a + q sin a, m. */
  readonly values: readonly [number, number, number]
  readonly covariance: readonly (readonly number[])[]
  readonly goodness: Goodness
}

const row = (angle: number): readonly [number, number, number] => [1, Math.cos(angle), Math.sin(angle)]

/** Weighted least squares fit of c + p cos a + q sin a to readings at three or more angles (else an
 * AngleProblem). m and rad.
 *
 * Each angle weighs by its own uncertainty (see `gather`). Where more than three angles are read, the
 * residuals give a second opinion: when reduced chi-square is above 1 the covariance is multiplied by it, so
 * the larger of gauge and scatter counts (Birge ratio; Birge, Phys. Rev. 40 (1932) 207, from memory). With
 * few redundant angles scatter is itself poorly known: see `closure` before trusting it. Rounding errors are
 * not independent while all gaps lie within a few steps, so angles beyond four do not make the gauge finer:
 * where the gauge counts, the covariance of n angles is multiplied by n/4. Below that, at slopes that turn
 * the gap by less than half a step, the truth lies within U in some 90 % of cases only. [derived, by
 * simulation]
 * @example fitHarmonic([0, 2, 4].map((i) => ({ angle: (i * Math.PI) / 3, value: 0.001 })),
 * 2e-5).ok // true */
export function fitHarmonic(readings: readonly Reading[], gaugeStep: number): Result<Harmonic, AngleProblem> {
  const places = gather(readings, gaugeStep)
  const problem = angleProblem(places.map((p) => p.angle))
  if (problem) return { ok: false, problem }

  const { values, covariance } = leastSquares(
    places.map((p) => row(p.angle)),
    places.map((p) => p.value),
    places.map((p) => p.standard),
    { weighted: true },
  )
  const [c = 0, p = 0, q = 0] = values
  const residual = (r: Reading): number => {
    const [one, cos, sin] = row(r.angle)
    return r.value - (c * one + p * cos + q * sin)
  }
  const degreesOfFreedom = places.length - 3
  const chiSquare = places.reduce((sum, place) => sum + (residual(place) / place.standard) ** 2, 0)
  const reduced = degreesOfFreedom > 0 ? chiSquare / degreesOfFreedom : undefined
  const coarsest = Math.max(...places.map((place) => place.standard))
  const crowd = (places.length / 4) * (rectangular(gaugeStep) / coarsest) ** 2
  const inflation = Math.max(1, crowd, reduced ?? 1)
  const closes = closure(places)
  return {
    ok: true,
    value: {
      values: [c, p, q],
      covariance: covariance.map((r) => r.map((v) => v * inflation)),
      goodness: {
        gaugeStep,
        residuals: readings.map(residual),
        degreesOfFreedom,
        ...(reduced !== undefined && { reducedChiSquare: reduced }),
        gaugeExplains: places.every((place) => place.fromGauge) && closes.state !== 'open',
        closure: closes,
      },
    },
  }
}
