import { inRange } from '../guard.ts'

/** How far a foot rose (m) when its own fastening alone was slackened. */
export type FootLift = { readonly name: string; readonly lift: number }

/** Thinner (m) than any shim. Common practice, no source. */
const thinnest = 1e-5

export type SoftFeet = {
  /** Feet that rose by more than the limit, the worst first. While there are any, alignment readings are not to be trusted. */
  readonly soft: readonly string[]
  /** The worst of them and what is missing under it, m: a shim, or a turn of its nut. Absent when no foot stands out. */
  readonly missing?: { readonly name: string; readonly height: number }
  /** Every foot is soft, and none rises more than a step of the gauge further than the middle one. */
  readonly alike: boolean
}

/** Soft feet from lift readings at three or more feet (else OutOfRange); lifts 0 to 50 mm, limit above 0, step of the gauge 0 to 1 mm (else
 * OutOfRange).
 *
 * Under the worst foot as much is missing as it rises more than the others (their median); one foot at a time, since feet of one machine share
 * the rocking. A difference of one step of the gauge is none: each lift is known to half a step. When all rise alike, the bed springs and no shim
 * helps. Source: Maintenance Scheduling for Mechanical Equipment (FIST 4-1A): one foot 0.005 in, others 0.002 in, shim 0.003 in; half a step: JCGM
 * 100 (GUM) F.2.2.1. Limit in use: 0.06 mm or 0.05 mm (common practice).
 * @example softFeet([127, 51, 51, 51].map((um, i) => ({ name: `${i}`, lift: um * 1e-6 })),
 * 6e-5, 2e-5).missing.height // ≈ 7.6e-5 */
export function softFeet(lifts: readonly FootLift[], limit: number, gaugeStep: number): SoftFeet {
  inRange('limit of lift (m)', limit, 1e-7, 0.05)
  inRange('step of the gauge (m)', gaugeStep, 0, 1e-3)
  inRange('number of feet', lifts.length, 3, 1000)
  const sorted = lifts
    .map(({ name, lift }) => ({ name, lift: inRange(`lift of foot ${name} (m)`, lift, 0, 0.05) }))
    .sort((a, b) => b.lift - a.lift)
  const soft = sorted.filter((foot) => foot.lift > limit).map((foot) => foot.name)
  const [worst, ...others] = sorted
  const height = (worst?.lift ?? 0) - median(others)
  const toTell = Math.max(gaugeStep * (1 + 1e-6), thinnest)
  const middle = median(sorted)
  const alike = soft.length === lifts.length && sorted.every(({ lift }) => Math.abs(lift - middle) <= toTell)
  return worst && soft.length > 0 && height > toTell
    ? { soft, missing: { name: worst.name, height }, alike: false }
    : { soft, alike }
}

/** Of lifts in their order. */
function median(lifts: readonly FootLift[]): number {
  const [low, high] = [Math.floor, Math.ceil].map((round) => lifts[round((lifts.length - 1) / 2)]?.lift ?? 0)
  return ((low ?? 0) + (high ?? 0)) / 2
}
