import { inRange } from '../guard.ts'
import type { Place } from './readings.ts'

/** Whether readings of one plane agree among themselves. `difference` and `allowed` (m) are those of the
 * four readings that agree least, in the measure of the rule for four readings a quarter turn apart: sum
 * of one opposite pair less sum of the other, against two gauge steps. `suspects` are the places (indexes)
 * any one of which could be the odd reading; `odd` is its angle (rad), there when only one could. `opposite`: those four are two opposite
 * pairs, so that the difference is that of their sums. */
export type Closure =
  | { readonly state: 'untestable' }
  | { readonly state: 'closed'; readonly difference: number; readonly allowed: number }
  | {
      readonly state: 'open'
      readonly difference: number
      readonly allowed: number
      readonly suspects: readonly number[]
      readonly opposite: boolean
      readonly odd?: number
    }

/** How many places a plane is fitted to at most. */
export const maxPlaces = 60

/** Whether four angles (rad) are two pairs half a turn apart. */
function arePairs([first = 0, ...others]: readonly number[]): boolean {
  const areOpposite = (a: number, b: number) => Math.abs(Math.cos(a - b) + 1) < 1e-9
  const across = others.findIndex((other) => areOpposite(first, other))
  const [c = 0, d = 0] = others.filter((_, i) => i !== across)
  return across >= 0 && areOpposite(c, d)
}

/** Four places in order of angle, and how they agree. */
type Four = {
  readonly of: readonly Place[]
  /** Residual of the first from the plane that comes nearest to all four, in reaches; the others are as far off, to each side in turn. */
  readonly level: number
  readonly difference: number
  readonly allowed: number
  /** Residual of any place from that plane, in half-widths. */
  readonly residual: (of: Place) => number
}

/** √3 u: half a gauge step where the gauge alone limits the reading, as far as the true value can be from the mark. */
const halfWidth = ({ standard }: Place): number => Math.sqrt(3) * standard

const sine = (from: Place, to: Place): number => Math.sin((to.angle - from.angle) / 2)

/** Size of the determinant of the rows [1, cos, sin] at three places, but for a factor that all have. */
const triple = ([i, j, k]: readonly Place[]): number =>
  i && j && k ? Math.abs(sine(i, j) * sine(j, k) * sine(i, k)) : Number.NaN

const without = <T>(all: readonly T[], one: T | undefined): readonly T[] =>
  all.filter((other) => other !== one)

function fourOf(of: readonly Place[]): Four {
  // With these weights, of signs in turn, four readings add up to zero on every plane.
  const weights = of.map((place) => triple(without(of, place)))
  const sum = (each: (place: Place, sign: number) => number) =>
    of.reduce((total, place, i) => total + (weights[i] ?? 0) * each(place, i % 2 === 0 ? 1 : -1), 0)
  const swing = sum(({ value }, sign) => sign * value)
  const level = swing / sum(halfWidth)
  const scale = 4 / sum(() => 1)
  const onPlane = of.map((place, i) => ({
    ...place,
    value: place.value - (i % 2 === 0 ? level : -level) * halfWidth(place),
  }))
  // The plane is drawn through the three that lie best apart.
  const [a, b, c] = without(onPlane, onPlane[weights.indexOf(Math.max(...weights))])
  const residual = (place: Place): number => {
    if (!a || !b || !c) return Number.NaN
    const share = (one: Place, j: Place, k: Place) =>
      (one.value * sine(j, place) * sine(k, place)) / (sine(j, one) * sine(k, one))
    return (place.value - share(a, b, c) - share(b, a, c) - share(c, a, b)) / halfWidth(place)
  }
  return { of, level, difference: scale * Math.abs(swing), allowed: scale * sum(halfWidth), residual }
}

/** The four that agree least of places in order of angle; undefined where there are fewer. Starts with any four and exchanges one of them for the
 * place that is farthest from their plane, until none is farther than they are. */
function worstFour(places: readonly Place[]): Four | undefined {
  if (places.length < 4) return undefined
  const quarters = [0, 1, 2, 3].flatMap((i) => places[Math.floor((i * places.length) / 4)] ?? [])
  let worst = fourOf(quarters)
  while (true) {
    const { of, level, residual } = worst
    let far: { readonly place: Place; readonly off: number } | undefined
    for (const place of places.filter((one) => !of.includes(one))) {
      const off = residual(place)
      if (Math.abs(off) > Math.abs(far?.off ?? 0)) far = { place, off }
    }
    if (!far || !(Math.abs(far.off) > Math.abs(level) * (1 + 1e-9) + 1e-9)) return worst
    const { place, off } = far
    // It takes the place of the neighbour that is off to the same side, so that the sides stay in turn.
    const after = of.filter(({ angle }) => angle < place.angle).length
    const side = off > 0 === level >= 0 ? 0 : 1
    const out = of[after % 2 === side ? after % 4 : (after + 3) % 4]
    const next = fourOf([...without(of, out), place].sort((a, b) => a.angle - b.angle))
    // Each four agrees less than the one before; where rounding hides that, none is worse.
    if (!(Math.abs(next.level) > Math.abs(level))) return worst
    worst = next
  }
}

/** Do the places close: is there a plane within reach (√3 u, half a gauge step) of every one of them? No two at one angle, as `gather` gives them; at
 * most 60 (else OutOfRange).
 *
 * For top, starboard, bottom, port this is exactly |top + bottom - starboard - port| ≤ 2 gauge steps. In
 * general a plane has three unknowns, so readings fit one within reach if and only if every four of them do
 * (Helly's theorem; the Chebyshev approximation theorem). The four that agree least are found by exchange, one place at a time (Stiefel, from memory;
 * here with 1, cos and sin, which are zero together at no more than two angles). If just one reading is wrong, it is in every four
 * that fail: the others close without it. Of four readings any one can be the odd one, so it cannot be told; no suspect at all means that
 * more than one reading is wrong, or the faces are not flat. Source: Bloch & Geitner, Machinery Component
 * Maintenance and Repair, data sheet check "T + B = S + S"; generalised here.
 * @example closure(gather([0, 1, 2, 3].map((i) => ({ angle: (i * Math.PI) / 2, value: 0.001 })),
 * 2e-5)).state // 'closed' */
export function closure(places: readonly Place[]): Closure {
  inRange('number of angles read', places.length, 0, maxPlaces)
  const inOrder = [...places].sort((a, b) => a.angle - b.angle)
  const worst = worstFour(inOrder)
  if (!worst) return { state: 'untestable' }
  const { of, difference, allowed } = worst
  const closes = (four: Four) => Math.abs(four.level) <= 1 + 1e-6
  if (closes(worst)) return { state: 'closed', difference, allowed }
  const odd = of.filter((suspect) => {
    const others = worstFour(without(inOrder, suspect))
    return !others || closes(others)
  })
  const suspects = odd.map((place) => places.indexOf(place)).sort((a, b) => a - b)
  const opposite = arePairs(of.map(({ angle }) => angle))
  const [only, ...more] = odd
  return {
    state: 'open',
    difference,
    allowed,
    suspects,
    opposite,
    ...(only && more.length === 0 && { odd: only.angle }),
  }
}
