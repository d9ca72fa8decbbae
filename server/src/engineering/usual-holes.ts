/** Holes as they are usually drilled for a bolt or stud. */
import { inRange } from './guard.ts'
import { rowsAround } from './rows.ts'

/** Clearance hole less the thread, on the diameter, mm, by the nominal diameter, mm. ISO 273 medium series (from memory). It begins at the smallest
 * stud there can be; above the largest row, where holes are no narrower, that row is used. */
const metric: readonly (readonly [diameter: number, clearance: number])[] = [
  [1, 0.2],
  [2, 0.4],
  [4, 0.5],
  [6, 0.6],
  [8, 1],
  [10, 1],
  [12, 1.5],
  [14, 1.5],
  [16, 1.5],
  [18, 2],
  [20, 2],
  [22, 2],
  [24, 2],
  [27, 3],
  [30, 3],
]

/** Nominal diameters that are inch sizes: whole sixteenths of an inch, mm. */
const isInch = (mm: number): boolean => Math.abs((mm / 25.4) * 16 - Math.round((mm / 25.4) * 16)) < 1e-3

/** How far a foot can go to either side of a stud (diameter m, 1 to 300 mm, else OutOfRange) that stands in the middle of a usual hole, m. Metric:
 * half the clearance of ISO 273 medium series (from memory), of the next smaller size where a size is not in it. Inch: 1/32 in on the diameter below
 * 1/2 in, else 1/16 in (from memory), halved.
 * @example usualSlide(0.016) // ≈ 7.5e-4 */
export function usualSlide(diameter: number): number {
  const mm = inRange('diameter of the stud (m)', diameter, 0.001 - 1e-9, 0.3) * 1000
  if (isInch(mm)) return 0.0254 / (mm < 12.6 ? 32 : 16) / 2
  return (rowsAround(metric, ([size]) => size, mm).under?.[1] ?? 0) / 2000
}
