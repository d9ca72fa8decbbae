import { type Band, slackOf } from './band.ts'

/** Whether a value keeps its limits, is beyond them, or is too close to tell. */
export type Verdict = 'within' | 'outside' | 'undecided'

/** A value that is known only as a bound: beyond the ends of a table. */
export type Bound = 'at-least' | 'less-than'

export interface Measured {
  readonly value: number
  /** Expanded, k = 2, in the unit of the value. */
  readonly uncertainty?: number | undefined
  readonly bound?: Bound | undefined
}

/** How a value stands to its limits (same unit): within when the interval of its uncertainty lies inside them, outside when it lies beyond one
 * of them, else undecided. A bound counts as the value itself: no verdict is milder beyond the end of a table. But it proves nothing about a
 * limit on its open side. Source: decision rule of ISO 14253-1.
 * @example verdictOn({ high: 0.1 }, { value: 0.08, uncertainty: 0.04 }) // 'undecided' */
export function verdictOn(limit: Band, { value, uncertainty = 0, bound }: Measured): Verdict {
  const slack = slackOf(limit)
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = limit
  const [from, to] = [value - uncertainty, value + uncertainty]
  if (from > high + slack || to < low - slack) return 'outside'
  const isInside = from >= low - slack && to <= high + slack
  return isInside && !isOpen(limit, bound) ? 'within' : 'undecided'
}

/** Whether a limit lies on the open side of a bound. */
const isOpen = ({ low, high }: Band, bound: Bound | undefined): boolean =>
  bound === 'at-least' ? high !== undefined : bound === 'less-than' && low !== undefined

export interface Margin {
  /** In the unit of the value: positive inside, negative beyond. */
  readonly size: number
  /** Of the limit; of a range, of half its width. Absent where that is zero. */
  readonly share?: number
}

/** The distance of a value to its nearest limit less its uncertainty (same unit). Undefined where there is no limit, or where a bound leaves open
 * on which side of it the value lies. Source: definition.
 * @example marginTo({ high: 0.1 }, { value: 0.06, uncertainty: 0.02 }) // { size: ≈ 0.02, share: ≈ 0.2 } */
export function marginTo(limit: Band, measured: Measured): Margin | undefined {
  const { low, high } = limit
  if (low === undefined && high === undefined) return undefined
  if (measured.bound && verdictOn(limit, measured) === 'undecided') return undefined
  const { value, uncertainty = 0 } = measured
  const toLow = low === undefined ? Number.POSITIVE_INFINITY : value - low
  const toHigh = high === undefined ? Number.POSITIVE_INFINITY : high - value
  const size = Math.min(toLow, toHigh) - uncertainty
  const whole = low !== undefined && high !== undefined ? (high - low) / 2 : Math.abs(high ?? low ?? 0)
  return whole > 0 ? { size, share: size / whole } : { size }
}
