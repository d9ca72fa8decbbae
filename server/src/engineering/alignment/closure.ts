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

/** Whether four angles (rad) are two pairs half a turn apart. */
function arePairs([first = 0, ...others]: readonly number[]): boolean {
  const areOpposite = (a: number, b: number) => Math.abs(Math.cos(a - b) + 1) < 1e-9
  const across = others.findIndex((other) => areOpposite(first, other))
  const [c = 0, d = 0] = others.filter((_, i) => i !== across)
  return across >= 0 && areOpposite(c, d)
}

/** Do the places close: is there a plane within reach (√3 u, half a gauge step) of every one of them? At
 * most 60 places (else OutOfRange).
 *
 * For top, starboard, bottom, port this is exactly |top + bottom - starboard - port| ≤ 2 gauge steps. In
 * general a plane has three unknowns, so readings fit one within reach if and only if every four of them do
 * (Helly's theorem; the Chebyshev approximation theorem). If just one reading is wrong, it is in every four
 * that fail. Of four readings any one can be the odd one, so it cannot be told; no suspect at all means that
 * more than one reading is wrong, or the faces are not flat. Source: Bloch & Geitner, Machinery Component
 * Maintenance and Repair, data sheet check "T + B = S + S"; generalised here.
 * @example closure(gather([0, 1, 2, 3].map((i) => ({ angle: (i * Math.PI) / 2, value: 0.001 })),
 * 2e-5)).state // 'closed' */
export function closure(places: readonly Place[]): Closure {
  const n = inRange('number of angles read', places.length, 0, 60)
  if (n < 4) return { state: 'untestable' }
  // Half a million fours of 60 places: nothing is made for each of them.
  const sines = places.map((from) => places.map((to) => Math.sin((to.angle - from.angle) / 2)))
  const sine = (from: number, to: number): number => sines[from]?.[to] ?? 0
  /** Determinant of the rows [1, cos, sin] at three places, but for a factor that all have. */
  const triple = (i: number, j: number, k: number): number => sine(i, j) * sine(j, k) * sine(i, k)
  const value = (i: number): number => places[i]?.value ?? 0
  const standard = (i: number): number => places[i]?.standard ?? 0
  let worst:
    | { readonly of: readonly number[]; readonly difference: number; readonly allowed: number }
    | undefined
  let failing = 0
  const failingWith = places.map(() => 0)
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      for (let c = b + 1; c < n; c++)
        for (let d = c + 1; d < n; d++) {
          // The one combination of four readings that every plane leaves at zero, scaled so that its weights add up to 4 in size.
          const [wa, wb, wc, wd] = [triple(b, c, d), -triple(a, c, d), triple(a, b, d), -triple(a, b, c)]
          const scale = 4 / (Math.abs(wa) + Math.abs(wb) + Math.abs(wc) + Math.abs(wd))
          const difference = scale * Math.abs(wa * value(a) + wb * value(b) + wc * value(c) + wd * value(d))
          // √3 u is half a gauge step where the gauge alone limits the reading: as far as the true value can be from the mark.
          const allowed =
            scale *
            Math.sqrt(3) *
            (Math.abs(wa) * standard(a) +
              Math.abs(wb) * standard(b) +
              Math.abs(wc) * standard(c) +
              Math.abs(wd) * standard(d))
          if (!worst || difference * worst.allowed > worst.difference * allowed)
            worst = { of: [a, b, c, d], difference, allowed }
          if (difference <= allowed * (1 + 1e-6)) continue
          failing += 1
          for (const i of [a, b, c, d]) failingWith[i] = (failingWith[i] ?? 0) + 1
        }
  if (!worst) return { state: 'untestable' }
  const { of, difference, allowed } = worst
  if (failing === 0) return { state: 'closed', difference, allowed }
  const suspects = places.map((_, i) => i).filter((i) => failingWith[i] === failing)
  const [only, ...more] = suspects
  const odd = only === undefined || more.length > 0 ? undefined : places[only]?.angle
  const opposite = arePairs(of.map((i) => places[i]?.angle ?? 0))
  return { state: 'open', difference, allowed, suspects, opposite, ...(odd !== undefined && { odd }) }
}
