import { OutOfRange } from '../../quantity/out-of-range.ts'
import { positive } from '../guard.ts'

/** A cell, a battery, or what several of them come to. */
export interface Unit {
  /** With no load, V (> 0). */
  readonly emf: number
  /** Ω (> 0). */
  readonly resistance: number
  /** A·s (> 0). */
  readonly capacity: number
}

const sum = (of: readonly number[]): number => of.reduce((total, one) => total + one, 0)

function checked(units: readonly Unit[]): readonly Unit[] {
  if (units.length === 0) throw new OutOfRange('a bank must have a battery')
  for (const { emf, resistance, capacity } of units) {
    positive('voltage', emf)
    positive('internal resistance', resistance)
    positive('capacity', capacity)
  }
  return units
}

/** Units in series: voltages and resistances add up, those of the links between them (Ω, ≥ 0) too; the capacity is that of the weakest. No unit, or a
 * figure that is not above zero, is OutOfRange. Source: Kirchhoff's voltage law.
 * @example inSeries([{ emf: 3.5, resistance: 0.00075, capacity: 360_000 }, { emf: 3.5, resistance: 0.00075, capacity: 324_000 }], 0.00025).capacity
 * // 324_000 */
export const inSeries = (units: readonly Unit[], links = 0): Unit => ({
  emf: sum(checked(units).map(({ emf }) => emf)),
  resistance:
    sum(units.map(({ resistance }) => resistance)) +
    (links === 0 ? 0 : positive('resistance of the links', links)),
  capacity: Math.min(...units.map(({ capacity }) => capacity)),
})

export interface ParallelBank extends Unit {
  /** What flows out of each string with no load, A; negative into it. All zero where the voltages are equal. */
  readonly circulating: readonly number[]
}

/** Strings side by side: their fault currents add up, and so do their capacities if the strings are alike. Where the strings are not alike, less than the
 * sum can be used: the one of lowest resistance is empty first, or overloaded. No string is OutOfRange. Source: Millman's theorem.
 * @example inParallel([{ emf: 12, resistance: 0.005, capacity: 36e4 }, { emf: 12, resistance: 0.005, capacity: 36e4 }]).resistance // ≈ 0.0025 */
export function inParallel(strings: readonly Unit[]): ParallelBank {
  const conductance = sum(checked(strings).map(({ resistance }) => 1 / resistance))
  const emf = sum(strings.map((string) => string.emf / string.resistance)) / conductance
  return {
    emf,
    resistance: 1 / conductance,
    capacity: sum(strings.map(({ capacity }) => capacity)),
    circulating: strings.map((string) => (string.emf - emf) / string.resistance),
  }
}
