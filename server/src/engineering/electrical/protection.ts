import { positive, reaches } from './guard.ts'
import { type RatingSeries, smallestStandardRating } from './standard-ratings.ts'

/** Overcurrent protection of a conductor. */

export interface ProtectionWindow {
  /** Least rating that carries the load without nuisance opening, A. */
  readonly low: number
  /** What the conductor carries, A: the rating at or below it protects it. */
  readonly high: number
  /** Above `high` the rule still bears a rating up to here, A … */
  readonly ceiling: number
  /** … any rating, or only the next standard one above `high`. */
  readonly above: 'any-rating' | 'next-standard-rating'
  readonly source: string
}

/** Ratings that suit a continuous `current` (A) in a conductor of `ampacity` (A, after derating) at `volts`:
 * from 1.25 times the current up to the ampacity. Past that, 150 %: outright under 50 V, else only to reach
 * the next standard rating. `low` above `high` means a conductor too small for its load. All > 0, else
 * RangeError. Source: 33 CFR 183.455(c), where the 150 % is of Table 5 before derating: held here to the
 * derated figure, the safer. The 1.25 is NEC practice for continuous loads.
 * @example protectionWindow({ current: 30, ampacity: 40, volts: 12 }).low // 37.5 */
export function protectionWindow(given: {
  readonly current: number
  readonly ampacity: number
  readonly volts: number
}): ProtectionWindow {
  const high = positive('ampacity', given.ampacity)
  const extraLow = positive('voltage', given.volts) < 50
  return {
    low: 1.25 * positive('current', given.current),
    high,
    ceiling: 1.5 * high,
    above: extraLow ? 'any-rating' : 'next-standard-rating',
    source: extraLow ? '33 CFR 183.455(c)(1)' : '33 CFR 183.455(c)(2)',
  }
}

/** `within`: at or below the ampacity. `allowed-above`: above it, by the 150 % rule. */
export type RatingVerdict = 'below-load' | 'within' | 'allowed-above' | 'above-conductor'

/** How a device of `rating` (A, > 0, else RangeError) stands to `window`. `series` says which ratings are
 * standard.
 * @example judgeRating(40, protectionWindow({ current: 30, ampacity: 40, volts: 12 }), 'us') // 'within' */
export function judgeRating(rating: number, window: ProtectionWindow, series: RatingSeries): RatingVerdict {
  if (!reaches(positive('rating', rating), window.low)) return 'below-load'
  if (reaches(window.high, rating)) return 'within'
  if (!reaches(window.ceiling, rating)) return 'above-conductor'
  const reached = window.above === 'any-rating' || rating === smallestStandardRating(window.high, series)
  return reached ? 'allowed-above' : 'above-conductor'
}
