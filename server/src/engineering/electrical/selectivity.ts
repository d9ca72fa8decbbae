import { reaches } from '../compare.ts'
import { positive } from '../guard.ts'
import { bendsOf, type ClearingCurve, clearing, usualTolerance } from './clearing-curve.ts'

/** An overcurrent device, as far as selectivity goes. */
export interface SelectiveDevice {
  /** A */
  readonly rating: number
  /** Such as `gG`; two devices of one class have curves alike. */
  readonly class?: string
  /** Points of the maker. */
  readonly curve?: ClearingCurve
}

export type Selectivity =
  /** Only the device nearest the fault opens. */
  | { readonly selective: 'yes'; readonly by: 'ratio' | 'curves' }
  /** The other one opens first, or may: at `current`, A, if the curves show it. */
  | { readonly selective: 'no'; readonly by: 'ratings' }
  | { readonly selective: 'no'; readonly by: 'curves'; readonly current: number }
  | { readonly selective: 'unknown' }

/** Two gG fuse-links in a row are selective from this ratio of their ratings on. Source: a fuse maker's guide. */
const selectiveRatio = 1.6
/** The rating from which the ratio holds, A. From memory. */
const ratioFrom = 16

/** Whether, of two devices in a row, the one `near` the fault alone opens in any short circuit from `least` to `most` (A, > 0, else OutOfRange). Two gG
 * fuse-links by the ratio of their ratings, 1.6 : 1, that of the nearer one at least 16 A; else by their curves, each as far off as the tolerance; else
 * not known. Two of one class with the ratings the wrong way round, or equal, are not selective. The maker's own table comes before this. The ratio is
 * for fuse-links of one series at the voltage of their curves; that it holds for DC is an assumption. Source: a fuse maker's guide.
 * @example selectivity({ rating: 160, class: 'gG' }, { rating: 100, class: 'gG' }, { least: 500, most: 6000 }).by // 'ratio' */
export function selectivity(
  far: SelectiveDevice,
  near: SelectiveDevice,
  { least, most }: { readonly least: number; readonly most: number },
  tolerance = usualTolerance,
): Selectivity {
  const ratio = positive('rating', far.rating) / positive('rating', near.rating)
  positive('least current', least)
  positive('largest current', most)
  const oneClass = far.class !== undefined && far.class === near.class
  if (far.curve && near.curve) {
    const found = byCurves(far.curve, near.curve, { least, most }, tolerance)
    if (found.selective !== 'unknown') return found
  }
  if (oneClass && reaches(1, ratio)) return { selective: 'no', by: 'ratings' }
  const byRatio = oneClass && far.class === 'gG' && reaches(near.rating, ratioFrom)
  return byRatio && reaches(ratio, selectiveRatio)
    ? { selective: 'yes', by: 'ratio' }
    : { selective: 'unknown' }
}

/** Both curves are straight between their bends, in logarithms, so what holds at all bends and both ends holds between them. */
function byCurves(
  far: ClearingCurve,
  near: ClearingCurve,
  { least, most }: { readonly least: number; readonly most: number },
  tolerance: number,
): Selectivity {
  const bends = [...bendsOf(far, tolerance), ...bendsOf(near, tolerance)]
  const currents = [least, ...bends.filter((current) => current > least && current < most), most]
  let proven = true
  for (const current of currents.toSorted((a, b) => a - b)) {
    const [there, here] = [clearing(far, current, tolerance), clearing(near, current, tolerance)]
    if (there.latest !== undefined && there.latest <= here.earliest)
      return { selective: 'no', by: 'curves', current }
    if (here.latest === undefined || here.latest >= there.earliest) proven = false
  }
  return proven ? { selective: 'yes', by: 'curves' } : { selective: 'unknown' }
}
