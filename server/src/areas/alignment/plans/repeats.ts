import { byPlace } from '../../../engineering/alignment/angles.ts'
import type { Reading } from '../../../engineering/alignment/readings.ts'

/** One place read more than once, and how far the values lie apart, m. */
export interface Repeats {
  readonly angle: number
  readonly difference: number
  /** What the gauge explains: each value is known to half a step, so two of one gap lie at most a step apart. */
  readonly allowed: number
}

/** The place whose repeated values differ most, where that is more than the gauge explains. */
export function repeatsApart(readings: readonly Reading[], gaugeStep: number): Repeats | undefined {
  const worst = byPlace(readings.map(({ angle }) => angle))
    .map(({ angle, of }) => {
      const values = of.map((i) => readings[i]?.value ?? Number.NaN)
      const difference = Math.max(...values) - Math.min(...values)
      return { angle, difference, allowed: gaugeStep }
    })
    .reduce<Repeats | undefined>((w, r) => (w && w.difference >= r.difference ? w : r), undefined)
  return worst && worst.difference > gaugeStep * (1 + 1e-6) ? worst : undefined
}
