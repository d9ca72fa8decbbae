import { expanded, type Uncertain } from '../../quantity/uncertainty.ts'
import { inRange, uncertain } from '../guard.ts'

/** Least share of a limit to aim for, however coarse the gauge: below it only luck would help. Common practice, no source. */
const leastShare = 0.1
/** Share to aim for at most, however fine the gauge: nuts and shims err too. Common practice, no source. */
const greatestShare = 0.7

/** The share of a limit that a result may use up for the next reading to prove it: its value will be the predicted one give or take the
 * errors of both readings, and has to stay a whole U clear of the limit. Zero or less where that gauge can prove nothing against this limit.
 * `now` and `next` are the value with the uncertainty of the reading the move is worked out from, and of the one that will
 * judge it. Same unit; OutOfRange for a limit that is not above 0
 * or a value that is none. Source: decision rule of ISO 14253-1; sum of independent errors, JCGM 100
 * 5.1. [derived]
 * @example provableShare({ value: 0.3, standard: 0.01 }, { value: 0, standard: 0.01 }, 0.1) // ≈ 0.5172 */
export function provableShare(now: Uncertain, next: Uncertain, limit: number): number {
  inRange('limit', limit, 1e-9, 100)
  uncertain('value now', now)
  uncertain('value next', next)
  return 1 - (Math.hypot(expanded(now), expanded(next)) + expanded(next)) / limit
}

/** The share of a limit that a move should leave at most: what the next reading can prove, within what is sensible to aim for.
 * Arguments as `provableShare`.
 * @example goalOf({ value: 0.3, standard: 0.01 }, { value: 0, standard: 0.01 }, 0.1) // ≈ 0.5172 */
export const goalOf = (now: Uncertain, next: Uncertain, limit: number): number =>
  Math.min(greatestShare, Math.max(leastShare, provableShare(now, next, limit)))
