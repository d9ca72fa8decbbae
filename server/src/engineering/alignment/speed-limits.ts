import { positive } from '../guard.ts'
import { rowsAround } from '../rows.ts'

/** Limits of a short flexible coupling: offset (m), and gap variation per length of the diameter it is read on (rad). */
export type SpeedLimits = {
  readonly offset: number
  readonly gapPerDiameter: number
  /** Faster than the table goes. */
  readonly beyondTable: boolean
}

/** Turns a minute; offset, mm; face gap, mm on 100 mm: the acceptable ones. */
const table = [
  [750, 0.19, 0.13],
  [1500, 0.09, 0.07],
  [3000, 0.06, 0.04],
  [6000, 0.03, 0.03],
] as const

/** Limits by the speed of the coupling (turns a minute, above zero, else OutOfRange): those of the first row of the table that is not slower,
 * so that a speed between two rows gets the stricter. Faster than the last row (6000), the last row: never looser than at a lower speed, but the
 * maker may ask for less, so `beyondTable` says it. Source: general industry alignment tolerance table for short flexible couplings (750, 1500,
 * 3000, 6000 turns a minute), acceptable values; beyond it: common practice, no source. Rigid couplings have none: align as well as can be
 * measured (same source).
 * @example speedLimits(1500).offset // ≈ 9e-5 */
export function speedLimits(turnsPerMinute: number): SpeedLimits {
  const { over } = rowsAround(table, ([speed]) => speed, positive('speed (turns a minute)', turnsPerMinute))
  const [, offset, gap] = over ?? table[3]
  return { offset: offset / 1000, gapPerDiameter: gap / 100, beyondTable: !over }
}

/** Speed at which the table of `speedLimits` ends, turns a minute. Same source. */
export const tableEnds = table[3][0]
