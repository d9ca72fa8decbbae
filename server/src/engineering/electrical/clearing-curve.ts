import { OutOfRange } from '../../quantity/out-of-range.ts'
import { reaches } from '../compare.ts'
import { inRange, positive } from '../guard.ts'
import { rowsAround } from '../rows.ts'

/** The curve of an overcurrent device: how long it takes to open at a current. */

/** A (> 0) and s (> 0). */
export interface CurvePoint {
  readonly current: number
  readonly time: number
}

/** Points of rising current, each no slower than the one before. */
export type ClearingCurve = readonly CurvePoint[]

/** How far a device may be from its curve, as a part of the current, where its maker does not say: time-current characteristics are published within
 * ±10 % of the current. Source: IEC 60269-1 (from memory). */
export const usualTolerance = 0.1

/** A curve from points in any order. No point, two times for one current, or a time that rises with the current is OutOfRange.
 * @example clearingCurve([{ current: 3000, time: 0.1 }, { current: 945, time: 100 }])[0].current // 945 */
export function clearingCurve(points: readonly CurvePoint[]): ClearingCurve {
  const curve = points.toSorted((a, b) => a.current - b.current)
  if (curve.length === 0) throw new OutOfRange('a curve must have a point')
  for (const [i, { current, time }] of curve.entries()) {
    positive('current of a point', current)
    positive('time of a point', time)
    const before = curve[i - 1]
    if (before && reaches(before.current, current))
      throw new OutOfRange('a curve must have one time for each current')
    if (before && before.time < time) throw new OutOfRange('the time to open must not rise with the current')
  }
  return curve
}

/** The time on a curve: by straight lines between its points in logarithms of both. None beyond its ends. */
function onCurve(curve: ClearingCurve, current: number): number | undefined {
  const { under, over } = rowsAround(curve, (point) => point.current, current)
  if (!(under && over)) return undefined
  if (under === over) return under.time
  const part = Math.log(current / under.current) / Math.log(over.current / under.current)
  return under.time * (over.time / under.time) ** part
}

/** When a device has opened, s. */
export interface Clearing {
  /** It has not opened before. Below the first point of the curve its time; 0 where nothing is known, above the last. */
  readonly earliest: number
  /** It has opened by then. Above the last point its time: more current opens no later, up to what the device can interrupt. Undefined below the first
   * point: it may never open. */
  readonly latest: number | undefined
}

const checked = (tolerance: number) => inRange('tolerance', tolerance, 0, 0.5)

/** When a device opens at a `current` (A, > 0, else OutOfRange), with the curve anywhere within a `tolerance` of the current (part of 1, 0 to 0.5;
 * `usualTolerance` unless given). Between the points the curve is taken as straight in logarithms; it is not continued beyond them. Points must be those
 * of total clearing for `latest` (a melting time leaves out the arc), and of melting for `earliest`; whether it can interrupt the current is another
 * question. Source: practice of time-current curves.
 * @example clearing(clearingCurve([{ current: 945, time: 100 }, { current: 3000, time: 0.1 }]), 945, 0).latest // 100 */
export function clearing(curve: ClearingCurve, current: number, tolerance = usualTolerance): Clearing {
  positive('current', current)
  const off = 1 + checked(tolerance)
  const [first, last] = ends(curve)
  const slow = current / off
  const fast = current * off
  return {
    latest: onCurve(curve, slow) ?? (slow > last.current ? last.time : undefined),
    earliest: onCurve(curve, fast) ?? (fast < first.current ? first.time : 0),
  }
}

function ends(curve: ClearingCurve): readonly [CurvePoint, CurvePoint] {
  const [first, last] = [curve[0], curve.at(-1)]
  if (!(first && last)) throw new OutOfRange('a curve must have a point')
  return [first, last]
}

/** Currents at which the curve, moved by the tolerance either way, bends; between them I²t has no maximum of its own.
 * @example bendsOf([{ current: 100, time: 1 }], 0.25) // [80, 100, 125] */
export const bendsOf = (curve: ClearingCurve, tolerance: number): readonly number[] =>
  curve.flatMap(({ current }) => [
    current / (1 + checked(tolerance)),
    current,
    current * (1 + checked(tolerance)),
  ])

/** The most that a conductor behind the device takes from any short circuit between two currents (A, > 0), as I²t at the latest time, A²s. The least
 * current is often the worst. Undefined where the device may not open at the least current. Source: IEC 60364-4-43, 434.5.2; I²t between two points is
 * straight in logarithms, so its largest value is at a point or an end.
 * @example largestEnergy(clearingCurve([{ current: 100, time: 10 }, { current: 1000, time: 0.01 }]), { least: 100, most: 1000 }, 0) // ≈ 100e3 */
export function largestEnergy(
  curve: ClearingCurve,
  { least, most }: { readonly least: number; readonly most: number },
  tolerance = usualTolerance,
): number | undefined {
  positive('least current', least)
  inRange('largest current', positive('largest current', most), least, 1e9)
  const currents = [
    least,
    ...bendsOf(curve, tolerance).filter((current) => current > least && current < most),
    most,
  ]
  let largest = 0
  for (const current of currents) {
    const { latest } = clearing(curve, current, tolerance)
    if (latest === undefined) return undefined
    largest = Math.max(largest, current ** 2 * latest)
  }
  return largest
}
