/** Current (A) that a constant power (W) takes from a source (V) through a resistance (Ω): the smaller root of R·I² − V·I + P = 0. Source: Ohm's law and
 * the definition of power. */
export const withDrop = (power: number, volts: number, resistance: number): number =>
  (volts - Math.sqrt(volts ** 2 - 4 * resistance * power)) / (2 * resistance)

/** Ω/m out and back at 105 °C. Greatest resistance at 20 °C, IEC 60228:2004 class 5 tinned, Ω/km; IEC 60028: 0.00393 /K. */
export const loopAt105 = (ohmPerKilometre: number): number => 2 * ohmPerKilometre * 1e-3 * (1 + 0.00393 * 85)
