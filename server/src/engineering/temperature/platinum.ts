import { inRange, positive } from '../guard.ts'

// IEC 60751: Callendar-Van Dusen. Coefficients agree in four public tables of the standard.
const a = 3.9083e-3
const b = -5.775e-7
const c = -4.183e-12

/** Where the standard gives its formula, °C. */
export const platinumRange = { low: -200, high: 850 } as const

/** Resistance of a platinum sensor, Ω, at `celsius` (-200 to 850 °C, else OutOfRange). `r0` (Ω, > 0) is that at 0 °C: 100 for Pt100, 1000 for Pt1000.
 * Rises with temperature. Source: IEC 60751.
 * @example platinumResistance({ celsius: 100, r0: 1000 }) // ≈ 1385.055 */
export function platinumResistance(given: { readonly celsius: number; readonly r0: number }): number {
  const t = inRange('temperature in °C', given.celsius, platinumRange.low, platinumRange.high)
  const r0 = positive('resistance at 0 °C (ohm)', given.r0)
  return r0 * (1 + a * t + b * t * t + (t < 0 ? c * (t - 100) * t ** 3 : 0))
}

/** Temperature of a platinum sensor, °C, from its resistance `ohms`; OutOfRange where that is outside -200 to 850 °C. From 0 °C up the formula is
 * solved exactly, below it by Newton's method, to 1e-9 K. Source: IEC 60751.
 * @example platinumTemperature({ ohms: 138.5055, r0: 100 }) // ≈ 100 */
export function platinumTemperature(given: { readonly ohms: number; readonly r0: number }): number {
  const r0 = positive('resistance at 0 °C (ohm)', given.r0)
  const [low, high] = [platinumRange.low, platinumRange.high].map((celsius) =>
    platinumResistance({ celsius, r0 }),
  ) as [number, number]
  const ohms = inRange('resistance (ohm)', given.ohms, low, high)
  const ratio = ohms / r0
  const exact = (-a + Math.sqrt(a * a - 4 * b * (1 - ratio))) / (2 * b)
  if (ratio >= 1) return exact
  let t = Math.max(platinumRange.low, exact)
  for (let i = 0; i < 8; i += 1) {
    const slope = a + 2 * b * t + c * (4 * t ** 3 - 300 * t * t)
    t = Math.max(platinumRange.low, t - (platinumResistance({ celsius: t, r0 }) / r0 - ratio) / slope)
  }
  return t
}

/** Tolerance classes of IEC 60751: K, and K for each K away from 0 °C. A and B agree in four public tables; AA and C are from memory. */
const tolerances = {
  AA: [0.1, 0.0017],
  A: [0.15, 0.002],
  B: [0.3, 0.005],
  C: [0.6, 0.01],
} as const

export type ToleranceClass = keyof typeof tolerances

/** How far a platinum sensor may be off, ± K, at `celsius` (-200 to 850 °C, else OutOfRange). Source: IEC 60751; classes AA and C from memory.
 * @example platinumTolerance('B', 100) // ≈ 0.8 */
export function platinumTolerance(toleranceClass: ToleranceClass, celsius: number): number {
  const t = inRange('temperature in °C', celsius, platinumRange.low, platinumRange.high)
  const [fixed, perKelvin] = tolerances[toleranceClass]
  return fixed + perKelvin * Math.abs(t)
}

/** How much too warm a platinum sensor reads, K, ≥ 0, at `celsius` (-200 to 800 °C), because of the resistance `leads` (Ω, ≥ 0, both leads together) in
 * series with it. OutOfRange where the sum is beyond 850 °C. Two-wire connection; three or four wires measure the leads apart. Source: IEC 60751. The rule of
 * thumb divides by 0.385 Ω/K, the mean slope of a Pt100 from 0 to 100 °C: 10 Ω are 25.974 K (open textbook), and at 200 °C really 27.3 K.
 * @example leadError({ celsius: 20, r0: 100, leads: 0.385 }) // ≈ 0.9918 */
export function leadError(given: {
  readonly celsius: number
  readonly r0: number
  readonly leads: number
}): number {
  const { celsius, r0 } = given
  const leads = inRange('lead resistance (ohm)', given.leads, 0, 1e6)
  return platinumTemperature({ ohms: platinumResistance({ celsius, r0 }) + leads, r0 }) - celsius
}
