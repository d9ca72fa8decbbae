import { inRange, positive } from '../guard.ts'

/** A capacitance that is charged through a resistor before its contactor closes, and discharged after it opens. */

export interface Precharge {
  /** Of the source, V. */
  readonly voltage: number
  /** Of the resistor in series, Ω. */
  readonly resistance: number
  /** F */
  readonly capacitance: number
  /** Across the capacitance, as a bleeder or a supply of the electronics, Ω. None unless given. */
  readonly across?: number | undefined
}

/** What the capacitance sees: a source behind a resistance. */
function seen({ voltage, resistance, across }: Precharge) {
  const [source, series] = [positive('voltage', voltage), positive('resistance', resistance)]
  if (across === undefined) return { end: source, resistance: series }
  const share = positive('resistance across', across) / (across + series)
  return { end: source * share, resistance: series * share }
}

/** The voltage that the capacitance ends at, V: that of the source, less what the resistance across takes. All > 0, else OutOfRange. Source: voltage
 * divider.
 * @example endVoltage({ voltage: 96, resistance: 100, capacitance: 1e-3, across: 900 }) // ≈ 86.4 */
export const endVoltage = (given: Precharge): number => seen(given).end

/** Time constant, s: RC, the two resistances in parallel. All > 0, else OutOfRange. Source: Bird, Electrical Circuit Theory and Technology, ch. 17.
 * @example timeConstant({ voltage: 800, resistance: 47, capacitance: 1e-3 }) // ≈ 0.047 */
export const timeConstant = (given: Precharge): number =>
  seen(given).resistance * positive('capacitance', given.capacitance)

/** The voltage of the capacitance after so many seconds (0 to 1e9, else OutOfRange), V, from zero: V (1 − e^(−t/τ)). Source: as `timeConstant`.
 * @example voltageAfter({ voltage: 20, resistance: 50e3, capacitance: 20e-6 }, 2) // ≈ 17.2933 */
export const voltageAfter = (given: Precharge, time: number): number =>
  -seen(given).end * Math.expm1(-inRange('time', time, 0, 1e9) / timeConstant(given))

/** When the capacitance has a `fraction` of the voltage of the source (above 0, below 1, else OutOfRange), s, from zero: −τ ln(1 − x). Undefined if it
 * never has: the resistance across takes too much. Source: as `timeConstant`.
 * @example timeToFraction({ voltage: 800, resistance: 47, capacitance: 1e-3 }, 0.95) // ≈ 0.1408 */
export function timeToFraction(given: Precharge, fraction: number): number | undefined {
  const wanted = inRange('fraction', positive('fraction', fraction), 0, 1 - 1e-12) * given.voltage
  const { end } = seen(given)
  return wanted < end ? -timeConstant(given) * Math.log1p(-wanted / end) : undefined
}

/** The current at the start, A: V/R, into an empty capacitance. Source: Ohm's law.
 * @example peakCurrent({ voltage: 800, resistance: 47 }) // ≈ 17.0213 */
export const peakCurrent = (given: { readonly voltage: number; readonly resistance: number }): number =>
  positive('voltage', given.voltage) / positive('resistance', given.resistance)

/** The power in the resistor at the start, W: V²/R. If the capacitance is shorted it lasts. Source: Joule's law.
 * @example peakPower({ voltage: 800, resistance: 47 }) // ≈ 13617 */
export const peakPower = (given: { readonly voltage: number; readonly resistance: number }): number =>
  positive('voltage', given.voltage) * peakCurrent(given)

/** The heat in the resistor for one precharge of so many seconds (≥ 0, else OutOfRange), J. With nothing across the capacitance it comes to ½CV², whatever
 * the resistance is; with a resistance across it goes on rising. Source: the integral of the current squared.
 * @example prechargeEnergy({ voltage: 800, resistance: 47, capacitance: 1e-3 }, 10) // ≈ 320 */
export function prechargeEnergy(given: Precharge, time: number): number {
  const { end } = seen(given)
  const [rest, tau] = [given.voltage - end, timeConstant(given)]
  const gone = -Math.expm1(-inRange('time', time, 0, 1e9) / tau)
  return (
    (rest ** 2 * time + 2 * rest * end * tau * gone + (end ** 2 * tau * gone * (2 - gone)) / 2) /
    given.resistance
  )
}

/** The mean power in the resistor with one precharge of so much energy (J, > 0) in each interval (s, > 0), W. Else OutOfRange. Source: a resistor maker's
 * guide.
 * @example averagePower({ energy: 320, interval: 60 }) // ≈ 5.333 */
export const averagePower = (given: { readonly energy: number; readonly interval: number }): number =>
  positive('energy', given.energy) / positive('interval', given.interval)

/** The current when the contactor closes with a `difference` (V, ≥ 0) across it, over the resistance of the loop (Ω, > 0), A: battery, cables and capacitor.
 * Else OutOfRange. An upper bound: inductance makes it less. Source: Ohm's law.
 * @example closingSurge({ difference: 4.8, loop: 0.012 }) // ≈ 400 */
export const closingSurge = (given: { readonly difference: number; readonly loop: number }): number =>
  inRange('difference', given.difference, 0, 1e6) / positive('resistance of the loop', given.loop)

/** Below this a DC voltage counts as safe to touch in a dry place, V. Source: IEC 61140 and IEC 60364-4-41, extra-low voltage, 60 V ripple-free (from
 * memory). */
export const touchSafe = 60

/** How long a capacitance (F) takes through a resistance (Ω) from one voltage to another (V), s: RC ln(V₀/V); 0 if it is there already. All > 0, else
 * OutOfRange. Source: as `timeConstant`.
 * @example dischargeTime({ voltage: 96, resistance: 10_000, capacitance: 6.8e-3 }) // ≈ 31.96 */
export const dischargeTime = (given: {
  readonly voltage: number
  readonly resistance: number
  readonly capacitance: number
  readonly to?: number
}): number =>
  positive('resistance', given.resistance) *
  positive('capacitance', given.capacitance) *
  Math.max(0, Math.log(positive('voltage', given.voltage) / positive('end voltage', given.to ?? touchSafe)))
