import { circularMil } from '../../quantity/wire-gauge.ts'
import { positive } from './guard.ts'

/** The two small-craft formulas for volts lost in a DC circuit. Both are ΔV = ρ I L / S with L out and back,
 * and differ in ρ: ABYC's is copper at 29 °C, ISO's at 8 °C, 9 % apart. Neither is the drop of a warm
 * cable. */
export const dropFormulas = {
  /** K = 10.75 Ω·CM/ft. Source: ABYC E-11, 11.14.2.6. */
  abyc: { name: 'ABYC E-11', resistivity: (10.75 * circularMil) / 0.3048 },
  /** 0.0164 Ω·mm²/m. Source: ISO 10133 and ISO 13297, annex. */
  iso: { name: 'ISO 13297', resistivity: 0.0164e-6 },
} as const

export type DropFormula = keyof typeof dropFormulas

/** Volts lost by a standard's formula: `current` A, `loopLength` out and back m, `area` m², all > 0, else
 * RangeError.
 * @example formulaDrop('iso', { current: 10, loopLength: 20, area: 2.5e-6 }) // ≈ 1.312 */
export const formulaDrop = (
  formula: DropFormula,
  given: { readonly current: number; readonly loopLength: number; readonly area: number },
): number => loss(formula, given) / positive('section', given.area)

/** Section, m², that loses `drop` volts by a standard's formula; the rest as in `formulaDrop`.
 * @example formulaSection('abyc', { current: 10, loopLength: 6.4008, drop: 0.36 }) // ≈ 3.1775e-6 */
export const formulaSection = (
  formula: DropFormula,
  given: { readonly current: number; readonly loopLength: number; readonly drop: number },
): number => loss(formula, given) / positive('voltage drop', given.drop)

const loss = (
  formula: DropFormula,
  given: { readonly current: number; readonly loopLength: number },
): number =>
  dropFormulas[formula].resistivity *
  positive('current', given.current) *
  positive('loop length', given.loopLength)
