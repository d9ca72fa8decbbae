import { inRange, positive } from '../guard.ts'

/** What a copper conductor bears in a short circuit: so short that all heat stays in the copper. */

/** From the highest temperature in service to the highest at the end of a short circuit, °C. */
export interface ShortCircuitTemperatures {
  readonly initialC: number
  readonly finalC: number
}

export interface InsulationLimit extends ShortCircuitTemperatures {
  /** As the table prints it, A·√s/mm². */
  readonly printed: number
}

/** Copper with its insulation. A soldered joint has 160 °C as its limit, whatever the insulation. Source: IEC 60364-5-54 and BS 7671 as cited by a
 * public cable-engineering page. */
export const insulationLimits = {
  'pvc 70': { initialC: 70, finalC: 160, printed: 115 },
  'pvc 70, above 300 mm²': { initialC: 70, finalC: 140, printed: 103 },
  'pvc 90': { initialC: 90, finalC: 160, printed: 100 },
  'pvc 90, above 300 mm²': { initialC: 90, finalC: 140, printed: 86 },
  'xlpe 90': { initialC: 90, finalC: 250, printed: 143 },
  'rubber 60': { initialC: 60, finalC: 200, printed: 141 },
  'rubber 85': { initialC: 85, finalC: 220, printed: 134 },
  'silicone 180': { initialC: 180, finalC: 350, printed: 132 },
} as const satisfies Readonly<Record<string, InsulationLimit>>

/** Where the material is not stated: the lowest final temperature of the table for sections up to 300 mm², that of PVC, °C. */
const finalIfUnknownC = 160

/** The temperatures of an insulation of which only the rating is known, °C (60 to 150, else OutOfRange): it starts at its rating and must not exceed
 * 160 °C, as PVC or a soldered joint. Cross-linked insulation of 90 °C and more bears up to 250 °C: only for a `finalC` that its maker states. For
 * 105 °C the constant is 87.6 to 160 °C and 134.8 to 250 °C: computed, in no table seen. Source: as `insulationLimits`, the lowest.
 * @example temperaturesIfUnknown(105).finalC // 160 */
export const temperaturesIfUnknown = (insulationC: number): ShortCircuitTemperatures => ({
  initialC: inRange('insulation in °C', insulationC, 60, 150),
  finalC: finalIfUnknownC,
})

/** The adiabatic constant k of copper between two temperatures in °C, A·√s/m²: 226 √ln((234.5 + θf) / (234.5 + θi)) per mm². From −60 to 400 °C, the
 * final above the initial, else OutOfRange. Source: IEC 60364-5-54, annex A; IEC 60949.
 * @example adiabaticConstant({ initialC: 70, finalC: 160 }) // ≈ 115e6 */
export function adiabaticConstant({ initialC, finalC }: ShortCircuitTemperatures): number {
  inRange('temperature before the short circuit in °C', initialC, -60, 400)
  inRange('temperature after the short circuit in °C', finalC, initialC + 1e-6, 400)
  return 226e6 * Math.sqrt(Math.log((234.5 + finalC) / (234.5 + initialC)))
}

/** Whether a short circuit of so many seconds (> 0, else OutOfRange) is so short that the conductor gives off no heat: up to 5 s. In a longer one it bears
 * more than is computed here, and the insulation is hot for long. Source: IEC 60364-4-43, 434.5.2.
 * @example isAdiabatic(0.4) // true */
export const isAdiabatic = (time: number): boolean => positive('time', time) <= 5

/** What a conductor of `area` (m², > 0) with constant `k` (A·√s/m², > 0) bears, as the integral of the current squared, A²s: k²S². Else OutOfRange. For
 * short circuits of up to 5 s. Below 0.1 s compare with the let-through energy of the device, not with current and time read from its curve. Source:
 * IEC 60364-4-43, 434.5.2.
 * @example withstand({ area: 35e-6, k: 143e6 }) // ≈ 25.05e6 */
export const withstand = (given: { readonly area: number; readonly k: number }): number =>
  (positive('section', given.area) * positive('constant', given.k)) ** 2

/** How long that conductor bears a `current` (A, > 0, else OutOfRange), s. Above 5 s it is less than the true time. Source: as `withstand`.
 * @example withstandTime({ area: 35e-6, k: 143e6, current: 5005 }) // ≈ 1 */
export const withstandTime = (given: {
  readonly area: number
  readonly k: number
  readonly current: number
}): number => withstand(given) / positive('current', given.current) ** 2

/** The smallest section that bears a `current` (A) for a `time` (s) with constant `k` (A·√s/m²), m²: I √t / k. All > 0, else OutOfRange. Above 5 s it is
 * larger than needed. Source: as `withstand`.
 * @example sectionToWithstand({ current: 12_000, time: 0.2, k: 143e6 }) // ≈ 37.5e-6 */
export const sectionToWithstand = (given: {
  readonly current: number
  readonly time: number
  readonly k: number
}): number =>
  (positive('current', given.current) * Math.sqrt(positive('time', given.time))) /
  positive('constant', given.k)
