import { reaches } from '../compare.ts'
import { positive } from '../guard.ts'
import { type RatingSeries, smallestStandardRating } from './standard-ratings.ts'

/** Overcurrent protection of a conductor. */

/** How far a rating may go above what its conductor carries. */
export interface ConductorLimit {
  /** What the conductor carries, A: the rating at or below it protects it. */
  readonly high: number
  /** Above `high` the rule still bears a rating up to here, A … */
  readonly ceiling: number
  /** … any rating, or only up to the next standard one above `high`. */
  readonly above: 'any-rating' | 'next-standard-rating'
  readonly source: string
}

export interface ProtectionWindow extends ConductorLimit {
  /** Least rating that carries the load without nuisance opening, A. */
  readonly low: number
}

/** What protects a conductor of `ampacity` (A, after derating) at `volts`: a rating up to the ampacity. Past
 * that, 150 %: outright under 50 V, else, and where the voltage is not known, only to reach the next standard
 * rating. All > 0, else OutOfRange. Source: 33 CFR 183.455(c), where the 150 % is of Table 5 before derating:
 * held here to the derated figure, the safer.
 * @example conductorLimit({ ampacity: 40, volts: 12 }).ceiling // 60 */
export function conductorLimit(given: {
  readonly ampacity: number
  readonly volts?: number | undefined
}): ConductorLimit {
  const high = positive('ampacity', given.ampacity)
  const extraLow = given.volts !== undefined && positive('voltage', given.volts) < 50
  return {
    high,
    ceiling: 1.5 * high,
    above: extraLow ? 'any-rating' : 'next-standard-rating',
    source: extraLow ? '33 CFR 183.455(c)(1)' : '33 CFR 183.455(c)(2)',
  }
}

/** Least rating, A, that carries a continuous `current` (A, > 0, else OutOfRange) without opening in service:
 * 1.25 times it. Source: NEC practice for continuous loads.
 * @example leastRating(30) // 37.5 */
export const leastRating = (current: number): number => 1.25 * positive('current', current)

/** Ratings that suit a continuous `current` (A) in a conductor of `ampacity` (A, after derating) at `volts`:
 * from `leastRating` up to what `conductorLimit` bears. `low` above `high` means a conductor too small for its
 * load. All > 0, else OutOfRange. Source: as for those two.
 * @example protectionWindow({ current: 30, ampacity: 40, volts: 12 }).low // 37.5 */
export const protectionWindow = (given: {
  readonly current: number
  readonly ampacity: number
  readonly volts?: number | undefined
}): ProtectionWindow => ({ low: leastRating(given.current), ...conductorLimit(given) })

/** The largest rating, A, that the rule bears on a conductor: its ceiling, or the next standard rating where that is not beyond it, else what the
 * conductor carries. `series` says which ratings are standard. Source: 33 CFR 183.455(c).
 * @example largestRating(conductorLimit({ ampacity: 120, volts: 96 }), 'us') // 125 */
export function largestRating(limit: ConductorLimit, series: RatingSeries): number {
  if (limit.above === 'any-rating') return limit.ceiling
  const next = smallestStandardRating(limit.high, series)
  return next !== undefined && reaches(limit.ceiling, next) ? next : limit.high
}

/** `within`: at or below the ampacity. `allowed-above`: above it, by the 150 % rule. */
export type ConductorVerdict = 'within' | 'allowed-above' | 'above-conductor'
export type RatingVerdict = 'below-load' | ConductorVerdict

/** How a device of `rating` (A, > 0, else OutOfRange) stands to its conductor, whatever the load. `series` says
 * which ratings are standard. Source: 33 CFR 183.455(c).
 * @example judgeConductor(60, conductorLimit({ ampacity: 40, volts: 12 }), 'us') // 'allowed-above' */
export function judgeConductor(
  rating: number,
  limit: ConductorLimit,
  series: RatingSeries,
): ConductorVerdict {
  if (reaches(limit.high, positive('rating', rating))) return 'within'
  return reaches(largestRating(limit, series), rating) ? 'allowed-above' : 'above-conductor'
}

/** Whether `rating` (A) carries a load whose `leastRating` is `low` (A). OutOfRange unless the rating is above
 * zero.
 * @example carriesLoad(40, leastRating(30)) // true */
export const carriesLoad = (rating: number, low: number): boolean => reaches(positive('rating', rating), low)

/** How a device of `rating` (A, > 0, else OutOfRange) stands to `window`, the load first. `series` says which
 * ratings are standard.
 * @example judgeRating(40, protectionWindow({ current: 30, ampacity: 40, volts: 12 }), 'us') // 'within' */
export const judgeRating = (rating: number, window: ProtectionWindow, series: RatingSeries): RatingVerdict =>
  carriesLoad(rating, window.low) ? judgeConductor(rating, window, series) : 'below-load'
