import { inRange } from '../guard.ts'

/** How far a foot rose (m) when its own fastening alone was slackened. */
export type FootLift = { readonly name: string; readonly lift: number }

export type SoftFeet = {
  /** Feet that rose by more than the limit. While there are any, alignment readings are not to be trusted. */
  readonly soft: readonly string[]
  /** Shim for the worst of them; then read the lifts again. Absent when no foot stands out. */
  readonly shim?: { readonly name: string; readonly thickness: number }
}

/** Thinner (m) than any shim. Common practice, no source. */
const thinnest = 1e-5

/** Soft feet from lift readings at three or more feet (else RangeError); lifts 0 to 50 mm, limit above 0
 * (else RangeError).
 *
 * The worst foot is shimmed by the difference between its rise and that of the others (their median); one at
 * a time, since feet of one machine share the rocking. When all rise alike, the bed springs and no shim
 * helps. Source: Maintenance Scheduling for Mechanical Equipment (FIST 4-1A): one foot 0.005 in, others 0.002
 * in, shim 0.003 in. Limit in use: 0.06 mm or 0.05 mm (common practice).
 * @example softFeet([127, 51, 51, 51].map((um, i) => ({ name: `${i}`, lift: um * 1e-6 })),
 * 6e-5).shim.thickness // ≈ 7.6e-5 */
export function softFeet(lifts: readonly FootLift[], limit: number): SoftFeet {
  inRange('limit of lift (m)', limit, 1e-7, 0.05)
  inRange('number of feet', lifts.length, 3, 1000)
  const sorted = lifts
    .map(({ name, lift }) => ({ name, lift: inRange(`lift of foot ${name} (m)`, lift, 0, 0.05) }))
    .sort((a, b) => b.lift - a.lift)
  const soft = sorted.filter((foot) => foot.lift > limit).map((foot) => foot.name)
  const [worst, ...others] = sorted
  const middle =
    ((others[Math.floor((others.length - 1) / 2)]?.lift ?? 0) +
      (others[Math.ceil((others.length - 1) / 2)]?.lift ?? 0)) /
    2
  const thickness = (worst?.lift ?? 0) - middle
  if (!worst || soft.length === 0 || thickness < thinnest) return { soft }
  return { soft, shim: { name: worst.name, thickness } }
}
