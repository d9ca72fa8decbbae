/** What sets the height of a machine foot: a stud with a nut under and a nut over the foot. m; + up. */
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
 * pitch 0.1 to 20 mm; else OutOfRange. Source: lead of a single-start thread = pitch; a hexagon has six
 * flats.
 * @example nutTravel({ turns: 1, flats: 2 }, 0.002) // ≈ 2.667e-3 */
export const nutTravel = ({ turns, flats }: Turns, pitch: number): number =>
  (inRange('turns', turns, 0, 1000) + inRange('flats', flats, 0, 6000) / 6) *
  inRange('pitch (m)', pitch, 1e-4, 0.02)

/** Move of the lower nut nearest to a correction (m, + raise; within 1 m, else OutOfRange), in flats, or parts of one: `partsOfFlat` 1 to
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
