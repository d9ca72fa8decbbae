/** Heights that the adjuster of a foot can be set to, as moves from where it stands now. m; + up. */
import { inRange } from './guard.ts'

/** Moves (m) within `reach` of `around`, ascending. */
export type Heights = (around: number, reach: number) => readonly number[]

/** How far (m, not signed) an adjuster can still go. */
export type Travel = { readonly up?: number; readonly down?: number }

/** More steps than this are not listed: the step is too fine for the move. */
const mostSteps = 20_000

/** Moves in equal steps (m, 0.1 µm to 0.1 m) within what travel is left: the nut of a stud by flats, or parts of one. RangeError when
 * more than 20 000 would have to be listed. [derived]
 * @example stepHeights(0.001)(0.0024, 0.001) // [0.002, 0.003] */
export function stepHeights(step: number, { up, down }: Travel = {}): Heights {
  inRange('step (m)', step, 1e-7, 0.1)
  const most = up === undefined ? Number.POSITIVE_INFINITY : inRange('travel up (m)', up, 0, 100)
  const least = down === undefined ? Number.NEGATIVE_INFINITY : -inRange('travel down (m)', down, 0, 100)
  return (around, reach) => {
    const low = Math.ceil(Math.max(least, around - reach) / step - 1e-6)
    const high = Math.floor(Math.min(most, around + reach) / step + 1e-6)
    inRange('number of steps', high - low, Number.NEGATIVE_INFINITY, mostSteps)
    return Array.from({ length: Math.max(0, high - low + 1) }, (_, i) => (low + i) * step)
  }
}

/** Moves that packs of at most `pieces` shims (1 to 4) from `stock` (m, up to 40 thicknesses of 1 µm to 0.1 m) can make, each as often as
 * wanted. Without `present` (m, the pack there now) the shims come on top of what is there, and nothing can be taken out; with it
 * the whole pack is made anew. Source of the limit of 4: Bachus & Custodio, Know and Understand Centrifugal Pumps.
 * @example shimHeights([0.0002, 0.0005])(0.0007, 0.0001) // [0.0006, 0.0007, 0.0008] */
export function shimHeights(
  stock: readonly number[],
  { present, pieces = 4 }: { readonly present?: number; readonly pieces?: number } = {},
): Heights {
  inRange('number of shim thicknesses', stock.length, 1, 40)
  inRange('most pieces in a pack', pieces, 1, 4)
  // Whole tenths of a micrometre, so that sums that are the same come out the same.
  const sizes = stock.map((t) => Math.round(inRange('shim thickness (m)', t, 1e-6, 0.1) * 1e7))
  let packs = new Set([0])
  for (let n = 0; n < pieces; n++)
    packs = new Set([...packs, ...[...packs].flatMap((pack) => sizes.map((size) => pack + size))])
  const from = present === undefined ? 0 : Math.round(inRange('present pack (m)', present, 0, 1) * 1e7)
  const moves = [...new Set([...packs].map((pack) => pack - from).concat(0))]
    .sort((a, b) => a - b)
    .map((move) => move / 1e7)
  return (around, reach) => {
    const start = firstFrom(moves, around - reach - 1e-9)
    let end = start
    while ((moves[end] ?? Number.POSITIVE_INFINITY) <= around + reach + 1e-9) end += 1
    return moves.slice(start, end)
  }
}

/** Where in an ascending list the first stands that is not below `least`. */
function firstFrom(ascending: readonly number[], least: number): number {
  let [low, high] = [0, ascending.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((ascending[middle] ?? least) < least) low = middle + 1
    else high = middle
  }
  return low
}
