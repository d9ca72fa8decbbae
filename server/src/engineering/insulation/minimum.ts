import { positive } from '../guard.ts'

export type WindingKind = 'random' | 'form'

/** Least insulation resistance of a winding at 40 °C after one minute, Ω. `volts` (> 0) is the rated rms voltage between lines. Random-wound stators, and
 * form-wound ones below 1 kV: 5 MΩ. Form-wound from 1 kV up: 100 MΩ. Source: IEEE 43-2013, as quoted in a quiz of the test trade and an article of a service
 * association; for windings made since about 1970.
 * @example insulationMinimum({ volts: 58, winding: 'random' }) // 5e6 */
export const insulationMinimum = (given: {
  readonly volts: number
  readonly winding: WindingKind
}): number => (positive('voltage', given.volts) >= 1000 && given.winding === 'form' ? 100e6 : 5e6)

/** Least insulation resistance of a winding made before about 1970, at 40 °C after one minute, Ω: (kV + 1) MΩ, `volts` (> 0) the rated rms voltage
 * between lines. Source: IEEE 43; 11 kV 12 MΩ and 33 kV 34 MΩ in two electrical notes.
 * @example insulationMinimumOld(11e3) // 12e6 */
export const insulationMinimumOld = (volts: number): number => (positive('voltage', volts) / 1000 + 1) * 1e6

/** DC voltage to test the insulation of a winding with, V, for a rated voltage `volts` (> 0, rms between lines). Source: IEEE 43, in an article of a service
 * association. Its table begins at 500 V; windings of 48 to 96 V are usually tested with 250 or 500 V, as the maker says (common practice), so 250 V counts.
 * @example insulationTestVoltage(58) // { low: 250, high: 500 } */
export function insulationTestVoltage(volts: number): { readonly low: number; readonly high: number } {
  const rated = positive('voltage', volts)
  if (rated < 1000) return { low: 250, high: 500 }
  if (rated <= 2500) return { low: 500, high: 1000 }
  if (rated <= 5000) return { low: 1000, high: 2500 }
  if (rated <= 12_000) return { low: 2500, high: 5000 }
  return { low: 5000, high: 10_000 }
}
