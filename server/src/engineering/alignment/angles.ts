/** Angles round the shaft: radians, clockwise from top looking forward. Top 0, starboard π/2, bottom π,
 * port 3π/2. */
import { inRange } from '../guard.ts'

const turn = 2 * Math.PI
/** Angles nearer to each other than this (rad) are one place; half a turn is also judged with it. */
const near = 1e-6

/** Clockwise from `from` to `to`, rad in [0, 2π). The same angle twice means the whole turn. */
export type Arc = { readonly from: number; readonly to: number }

/** Why a set of readings cannot fix a plane. `missing` is the largest part of the turn without a reading;
 * one more reading inside `readBetween` mends it (absent with fewer than two places: then two more are
 * needed). */
export type AngleProblem = {
  readonly type: 'too-few-angles' | 'within-half-turn'
  readonly places: number
  readonly missing: Arc
  readonly readBetween?: Arc
}

/** The same angle in [0, 2π). `angle` rad, within ±1000 (else OutOfRange).
 * @example normalAngle(-Math.PI / 2) // ≈ 4.712 */
export function normalAngle(angle: number): number {
  const a = ((inRange('angle (rad)', angle, -1000, 1000) % turn) + turn) % turn
  return turn - a < 1e-12 ? 0 : a
}

/** Angles (rad) by place, in the order in which the places first come: where each is, in [0, 2π), and which of the angles are there.
 * @example byPlace([1, 0, 2 * Math.PI]) // [{ angle: 1, of: [0] }, { angle: 0, of: [1, 2] }] */
export function byPlace(
  angles: readonly number[],
): readonly { readonly angle: number; readonly of: readonly number[] }[] {
  const places: { readonly angle: number; readonly of: number[] }[] = []
  const inOrder = [...angles.map(normalAngle).entries()].sort(([, a], [, b]) => a - b)
  for (const [i, angle] of inOrder) {
    const here = [places.at(-1), places[0]].find((place) => place && isNear(place.angle, angle))
    if (here) here.of.push(i)
    else places.push({ angle, of: [i] })
  }
  const first = ({ of }: { readonly of: readonly number[] }) => Math.min(...of)
  return places.sort((a, b) => first(a) - first(b))
}

function isNear(a: number, b: number): boolean {
  const apart = Math.abs(a - b)
  return Math.min(apart, turn - apart) < near
}

/** What is missing from a set of angles (rad) for a plane to be fitted, or undefined when nothing is: three
 * places or more, not all within half a turn (a closed half turn: top, starboard and bottom alone do not
 * do: nothing was read to port).
 * @example angleProblem([0, Math.PI / 2, Math.PI]).missing.from // ≈ 3.1416 */
export function angleProblem(angles: readonly number[]): AngleProblem | undefined {
  const places = byPlace(angles)
    .map(({ angle }) => angle)
    .sort((a, b) => a - b)
  let missing: Arc = { from: 0, to: 0 }
  let widest = 0
  places.forEach((from, i) => {
    const to = places[i + 1] ?? (places[0] ?? 0) + turn
    if (to - from <= widest + near) return
    widest = to - from
    missing = { from, to: normalAngle(to) }
  })
  const few = places.length < 3
  if (!few && widest < turn / 2 - near) return undefined
  const opposite = { from: normalAngle(missing.to + turn / 2), to: normalAngle(missing.from + turn / 2) }
  return {
    type: few ? 'too-few-angles' : 'within-half-turn',
    places: places.length,
    missing,
    ...(places.length >= 2 && { readBetween: opposite }),
  }
}
