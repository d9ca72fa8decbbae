import { rectangular } from '../../quantity/uncertainty.ts'
import { coordinate, inRange } from '../guard.ts'
import { byPlace } from './angles.ts'

/** One value (m) read at one angle (rad clockwise from top looking forward). The same angle may be read
 * more than once. */
export type Reading = { readonly angle: number; readonly value: number }

/** All that was read at one angle: mean (m), its standard uncertainty (m), and whether the gauge step alone
 * explains that. */
export type Place = {
  readonly angle: number
  readonly value: number
  readonly standard: number
  readonly fromGauge: boolean
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length

/** Readings gathered by angle, in the order in which the places were first read. `gaugeStep` m, 10 nm to 10 mm; values within 100 m; else OutOfRange.
 *
 * The uncertainty of a place is the larger of two: gauge step / √12, which repeating does not shrink since
 * the same gap rounds the same way each time; and s / √n, with s the scatter of repeats pooled over all
 * angles and n the repeats here (JCGM 100 4.2, 4.3).
 * @example gather([{ angle: 0, value: 1.92e-3 }, { angle: 0, value: 1.92e-3 }],
 * 2e-5)[0].standard // ≈ 5.77e-6 */
export function gather(readings: readonly Reading[], gaugeStep: number): readonly Place[] {
  const gauge = rectangular(inRange('gauge step (m)', gaugeStep, 1e-8, 0.01))
  const values = readings.map(({ value }) => coordinate('reading', value))
  const groups = byPlace(readings.map(({ angle }) => angle)).map(({ angle, of }) => ({
    angle,
    values: of.map((i) => values[i] ?? Number.NaN),
  }))
  const repeats = readings.length - groups.length
  const squares = groups.flatMap(({ values }) => values.map((v) => (v - mean(values)) ** 2))
  const pooled = repeats > 0 ? Math.sqrt(squares.reduce((sum, s) => sum + s, 0) / repeats) : 0
  return groups.map(({ angle, values }) => {
    const scatter = pooled / Math.sqrt(values.length)
    return { angle, value: mean(values), standard: Math.max(gauge, scatter), fromGauge: scatter <= gauge }
  })
}
