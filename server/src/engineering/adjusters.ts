/** What sets the height of a machine foot: a stud with a nut under and a nut over the foot, or a pack of
 * shims. m; + up. */
import { inRange } from './guard.ts'
import type { Thread } from './thread.ts'

/** Whole turns and flats of a nut, a sixth of a turn each. */
export type Turns = { readonly turns: number; readonly flats: number }

/** A move of the foot by its lower nut. `moved` is what it does (m, + up), `left` what is then still
 * missing (correction less moved). `lowerNut` is the way the nut turns seen from above; absent when
 * nothing is to be turned. */
export type NutMove = Turns & {
  readonly direction: 'up' | 'down' | 'none'
  readonly moved: number
  readonly left: number
  readonly lowerNut?: 'clockwise' | 'counter-clockwise'
}

/** Way a nut travels along its stud for turns and flats, m, not signed. Turns 0 to 1000, flats 0 to 6000;
 * pitch 0.1 to 20 mm; else RangeError. Source: lead of a single-start thread = pitch; a hexagon has six
 * flats.
 * @example nutTravel({ turns: 1, flats: 2 }, 0.002) // ≈ 2.667e-3 */
export const nutTravel = ({ turns, flats }: Turns, pitch: number): number =>
  (inRange('turns', turns, 0, 1000) + inRange('flats', flats, 0, 6000) / 6) *
  inRange('pitch (m)', pitch, 1e-4, 0.02)

/** Move of the lower nut nearest to a correction (m, + raise; within 1 m, else RangeError), in flats, or parts of one: `partsOfFlat` 1 to
 * 12. Midway between two, the smaller move.
 *
 * Which way: a right-hand screw or nut, turned clockwise as seen by someone, goes away from him. Stud
 * upright, seen from above: clockwise goes down. So on a right-hand thread the nut under the foot climbs, and
 * raises it, when turned counter-clockwise seen from above (the same turn is clockwise seen from below). It
 * makes no difference which nut it is or which end of the stud is held; a left-hand thread reverses it.
 * Either way the upper nut is slackened first (to raise: far enough to let the foot up), then the lower nut
 * sets the height, then the upper nut clamps. Source: [derived]; one flat = pitch / 6.
 * @example nutMove(-0.533e-3, { pitch: 0.002, hand: 'right' }, 1).left // ≈ 1.337e-4 */
export function nutMove(
  correction: number,
  { pitch, hand }: Pick<Thread, 'pitch' | 'hand'>,
  partsOfFlat: number,
): NutMove {
  const wanted = inRange('correction (m)', correction, -1, 1)
  inRange('parts of a flat', partsOfFlat, 1, 12)
  const flat = nutTravel({ turns: 0, flats: 1 }, pitch)
  const parts = Math.max(0, Math.ceil((Math.abs(wanted) / flat) * partsOfFlat - 0.5))
  const perTurn = 6 * partsOfFlat
  const by = { turns: Math.floor(parts / perTurn), flats: (parts % perTurn) / partsOfFlat }
  if (parts === 0) return { ...by, direction: 'none', moved: 0, left: wanted }
  const up = wanted > 0
  const moved = (up ? 1 : -1) * nutTravel(by, pitch)
  const lowerNut = up === (hand === 'right') ? 'counter-clockwise' : 'clockwise'
  return { ...by, direction: up ? 'up' : 'down', moved, left: wanted - moved, lowerNut }
}

/** Shims of one pack, thickest first, their sum, and what is then still missing (wanted less sum), m. */
export type ShimPack = {
  readonly pieces: readonly number[]
  readonly thickness: number
  readonly left: number
}

/** Sums (m) nearer to each other than this count as the same. */
const alike = 1e-9

/** Pack of at most `pieces` shims (1 to 6, by default 4) out of `stock` thicknesses, any of them as often
 * as wanted, that comes nearest to a thickness. Exact search; on ties fewest pieces, then the thinner
 * pack. Thickness is that of the whole pack, 0 to 1 m: what has to go in, or present pack plus correction
 * where the foot goes down (else RangeError; a pack cannot be thinner than nothing). Stock: up to 40
 * thicknesses of 1 µm to 0.1 m (else RangeError). At most 3 to 4 pieces: Bachus & Custodio, Know and
 * Understand Centrifugal Pumps.
 * @example shimPack(0.8e-3, [0.1e-3, 0.2e-3, 0.5e-3]).pieces // [0.5e-3, 0.2e-3, 0.1e-3] */
export function shimPack(
  thickness: number,
  stock: readonly number[],
  { pieces: most = 4 }: { readonly pieces?: number } = {},
): ShimPack {
  const wanted = inRange('thickness of the pack (m)', thickness, 0, 1)
  inRange('most pieces in a pack', most, 1, 6)
  const sorted = [...new Set(stock.map((t) => inRange('shim thickness (m)', t, 1e-6, 0.1)))].sort(
    (a, b) => b - a,
  )
  inRange('number of shim thicknesses', sorted.length, 1, 40)
  let best: ShimPack = { pieces: [], thickness: 0, left: wanted }
  const better = (sum: number, count: number): boolean => {
    const gain = Math.abs(best.left) - Math.abs(wanted - sum)
    if (Math.abs(gain) > alike) return gain > 0
    return count < best.pieces.length || (count === best.pieces.length && sum < best.thickness - alike)
  }
  const search = (from: number, chosen: readonly number[], sum: number): void => {
    if (better(sum, chosen.length)) best = { pieces: chosen, thickness: sum, left: wanted - sum }
    // Once past the thickness wanted, every further piece only leads away from it.
    if (chosen.length === most || sum > wanted) return
    sorted.slice(from).forEach((piece, i) => {
      search(from + i, [...chosen, piece], sum + piece)
    })
  }
  search(0, [], 0)
  return best
}
