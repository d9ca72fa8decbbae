import { inRange, positive } from '../guard.ts'

/** How a power cable may be laid: bends, supports, distance to signal cables, equal lengths. Lengths in m. */

/** A cable up to this diameter may be bent to 4 times it, a thicker one to 6 times. */
const thick = 0.025

/** Tightest bend of a fixed, unscreened cable of `outerDiameter` (> 0, else OutOfRange), radius at the inside: 4 times the diameter up to 25 mm, 6 times
 * above. Source: a public table of a cable maker; class rules for ships have 4 times for any diameter, so the safer of the two above 25 mm.
 * @example leastBendRadius(0.017) // ≈ 0.068 */
export function leastBendRadius(outerDiameter: number): number {
  const diameter = positive('outer diameter', outerDiameter)
  return (diameter <= thick * (1 + 1e-9) ? 4 : 6) * diameter
}

/** What the outer diameter of a cable with a conductor of `area` (m², > 0, else OutOfRange) is more than: that of a solid circle of copper. It can show
 * that a bend is too tight, never that it is not. Source: geometry.
 * @example leastOuterDiameter(95e-6) // ≈ 0.0109981 */
export const leastOuterDiameter = (area: number): number =>
  Math.sqrt((4 * positive('section', area)) / Math.PI)

/** A limit with where it is from. */
export interface LayingLimit {
  readonly metres: number
  readonly source: string
}

/** Longest distance between two supports. `iso`: 450 mm, and 300 mm for a battery conductor and for one in a sheath (ISO 10133:2012, 7.3 and 7.4, public
 * excerpt). `abyc`: 18 in (ABYC E-11 as summarised). Without rules the ISO figures, the safer.
 * @example supportLimit({ rules: 'abyc', isClose: true }).metres // ≈ 0.4572 */
export const supportLimit = (given: {
  readonly rules: 'iso' | 'abyc' | undefined
  /** From a battery, or in a sheath. */
  readonly isClose: boolean
}): LayingLimit =>
  given.rules === 'abyc'
    ? { metres: 18 * 0.0254, source: 'ABYC E-11, as summarised' }
    : { metres: given.isClose ? 0.3 : 0.45, source: 'ISO 10133:2012, 7.3 and 7.4' }

/** Distance to a signal cable that runs alongside. `least`: below it every source seen warns. `safe`: what the strictest asks for: 500 mm beside a
 * motor cable, 200 mm beside a supply. Sources: two manuals of industrial drives, which disagree.
 * @example signalLimits('three-phase').safe // 0.5 */
export const signalLimits = (
  system: 'dc' | 'three-phase',
): { readonly least: number; readonly safe: number } => ({ least: 0.1, safe: system === 'dc' ? 0.2 : 0.5 })

/** How far the longest of some lengths (each > 0, at most 1 km, else OutOfRange) is above the shortest, as a share of their mean; none of fewer than two.
 * @example lengthSpread([1.8, 1.82, 1.79]) // ≈ 0.016636 */
export function lengthSpread(lengths: readonly number[]): number | undefined {
  if (lengths.length < 2) return undefined
  const all = lengths.map((length) => inRange('length', length, 1e-6, 1000))
  const mean = all.reduce((sum, length) => sum + length, 0) / all.length
  return (Math.max(...all) - Math.min(...all)) / mean
}
