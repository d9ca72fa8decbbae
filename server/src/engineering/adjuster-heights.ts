/** Heights that the adjuster of a foot can be set to, as moves from where it stands now. m; + up. */
import { inRange } from './guard.ts'
import { packSums } from './shim-packs.ts'

/** The moves (m) an adjuster can make, looked up one by one: their number may be past listing. Those nearer to each other than a nanometre
 * are one. */
export interface Heights {
  /** Least move not below `height`; undefined where there is none. */
  readonly from: (height: number) => number | undefined
  /** Greatest move not above `height`; undefined where there is none. */
  readonly upTo: (height: number) => number | undefined
}

/** How far (m, not signed) an adjuster can still go. */
type Travel = { readonly up?: number; readonly down?: number }

/** Heights (m) nearer to each other than this are one. */
const alike = 1e-9

/** Moves in equal steps (m, 0.1 µm to 0.1 m) within what travel is left (0 to 100 m): the nut of a stud by flats, or parts of one. Else
 * OutOfRange. [derived]
 * @example stepHeights(0.001).from(0.0014) // 0.002 */
export function stepHeights(step: number, { up = 100, down = 100 }: Travel = {}): Heights {
  inRange('step (m)', step, 1e-7, 0.1)
  const most = Math.floor(inRange('travel up (m)', up, 0, 100) / step + 1e-6)
  const least = 0 - Math.floor(inRange('travel down (m)', down, 0, 100) / step + 1e-6)
  return {
    from: (height) => {
      const n = Math.max(least, Math.ceil((height - alike) / step))
      return n <= most ? n * step : undefined
    },
    upTo: (height) => {
      const n = Math.min(most, Math.floor((height + alike) / step))
      return n >= least ? n * step : undefined
    },
  }
}

/** Moves that packs of at most 4 shims from `stock` (m, 1 to 41 thicknesses of 1 µm to 0.1 m, to the nanometre) can make, each as
 * often as wanted. Without `present` (m, 0 to 1, the pack there now) the shims come on top of what is there, and nothing can be taken out;
 * with it the whole pack is made anew. OutOfRange on a bad number. Source of the limit of 4: Bachus & Custodio, Know and Understand
 * Centrifugal Pumps.
 * @example shimHeights([0.0002, 0.0005])().from(0.00061) // 0.0007 */
export function shimHeights(stock: readonly number[]): (present?: number) => Heights {
  const sums = packSums(stock)
  return (present = 0) => {
    // Whole nanometres, so that sums that are the same come out the same.
    const there = Math.round(inRange('present pack (m)', present, 0, 1) * 1e9)
    const move = (i: number) => {
      const sum = sums[i]
      return sum === undefined ? undefined : (sum - there) / 1e9
    }
    return {
      from: (height) => move(firstFrom(sums, (height - alike) * 1e9 + there)),
      upTo: (height) => move(firstFrom(sums, (height + alike) * 1e9 + there) - 1),
    }
  }
}

/** Moves that any of several adjusters can make.
 * @example anyOf([stepHeights(0.003), stepHeights(0.002)]).from(0.0025) // 0.003 */
export const anyOf = (all: readonly Heights[]): Heights => ({
  from: (height) => {
    let least: number | undefined
    for (const one of all) {
      const found = one.from(height)
      if (found !== undefined && (least === undefined || found < least)) least = found
    }
    return least
  },
  upTo: (height) => {
    let most: number | undefined
    for (const one of all) {
      const found = one.upTo(height)
      if (found !== undefined && (most === undefined || found > most)) most = found
    }
    return most
  },
})

/** Those of the moves from `low` to `high` (m).
 * @example between(stepHeights(0.001), 0, 0.002).from(0.0025) // undefined */
export const between = (heights: Heights, low: number, high: number): Heights => ({
  from: (height) => {
    const found = heights.from(Math.max(height, low))
    return found !== undefined && found <= high + alike ? found : undefined
  },
  upTo: (height) => {
    const found = heights.upTo(Math.min(height, high))
    return found !== undefined && found >= low - alike ? found : undefined
  },
})

/** Where in an ascending list the first stands that is not below `least`. */
function firstFrom(ascending: ArrayLike<number>, least: number): number {
  let [low, high] = [0, ascending.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((ascending[middle] ?? least) < least) low = middle + 1
    else high = middle
  }
  return low
}
