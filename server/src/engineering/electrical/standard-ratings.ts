import { reaches } from '../compare.ts'
import { positive } from '../guard.ts'
import { rowsAround } from '../rows.ts'

/** Ratings that fuses and breakers are made in, A. */
export const standardRatings = {
  /** 6 to 200 A: BS 88-2 rating list. 250 A and up continue the R10 numbers: from memory for IEC 60269-1. */
  iec: {
    source: 'IEC 60269 gG fuse-links (above 200 A by R10, from memory)',
    amps: [6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630],
  },
  /** Fuses have 1, 3, 6 and 10 A besides what breakers have. */
  us: {
    source: 'NEC 240.6(A)',
    amps: [
      1, 3, 6, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250,
      300, 350, 400, 450, 500, 600, 700, 800, 1000, 1200,
    ],
  },
} as const

export type RatingSeries = keyof typeof standardRatings

/** Smallest standard rating of `atLeast` (A, > 0, else OutOfRange), or undefined when the list ends below it.
 * @example smallestStandardRating(168.067, 'us') // 175 */
export const smallestStandardRating = (atLeast: number, series: RatingSeries): number | undefined =>
  rowsAround<number>(standardRatings[series].amps, (amps) => amps, positive('rating', atLeast)).over

/** The largest rating of the list, A: above it no rating counts as standard.
 * @example largestStandardRating('iec') // 630 */
export const largestStandardRating = (series: RatingSeries): number =>
  Math.max(...standardRatings[series].amps)

/** Preferred numbers R10: ten to a decade, rounded. Source: ISO 3. */
const r10 = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8]

/** A rating of a series. */
export interface StandardRating {
  readonly amps: number
  /** No: the list ends before it, and it is a preferred number, R10. */
  readonly listed: boolean
}

/** Preferred numbers from one tenth of a value to ten times it, A. */
function preferredAround(value: number): number[] {
  const decade = 10 ** Math.floor(Math.log10(value))
  return [decade / 10, decade, decade * 10].flatMap((tens) =>
    r10.map((number) => Number((number * tens).toPrecision(3))),
  )
}

/** Smallest standard rating of at least so many A (> 0, else OutOfRange): of the list, beyond it the preferred number. Source: as `standardRatings`; ISO 3.
 * @example ratingAtLeast(700, 'iec') // { amps: 800, listed: false } */
export function ratingAtLeast(amps: number, series: RatingSeries): StandardRating {
  const listed = smallestStandardRating(amps, series)
  if (listed !== undefined) return { amps: listed, listed: true }
  return { amps: preferredAround(amps).find((number) => reaches(number, amps)) ?? amps, listed: false }
}

/** Largest standard rating of at most so many A (> 0, else OutOfRange): of the list, beyond its ends the preferred number. Source: as `ratingAtLeast`.
 * @example ratingAtMost(700, 'iec') // { amps: 630, listed: true } */
export function ratingAtMost(amps: number, series: RatingSeries): StandardRating {
  const { under, over } = rowsAround<number>(
    standardRatings[series].amps,
    (rating) => rating,
    positive('rating', amps),
  )
  const preferred = preferredAround(amps).findLast((number) => reaches(amps, number)) ?? amps
  if (under === undefined) return { amps: preferred, listed: false }
  return over === undefined && preferred > under
    ? { amps: preferred, listed: false }
    : { amps: under, listed: true }
}
