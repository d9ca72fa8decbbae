import { inRange, positive, temperature } from '../guard.ts'
import { rowsAround } from '../rows.ts'
import type { Assumption } from './assumption.ts'
import { awgArea } from './awg.ts'
import { iec60228 } from './iec-60228.ts'

/** Copper conductors: section and resistance. Temperatures are in °C throughout this folder, because
 * insulation classes and every table are; a name that ends in C says so. */

/** A conductor size as the trade names it. The number names a row of a standard; it is not a measured
 * section. */
export type ConductorSection =
  | { readonly system: 'awg'; readonly n: number }
  | { readonly system: 'metric'; readonly mm2: number }

export interface ConductorResistance {
  /** Ω/m at 20 °C. */
  readonly ohmPerMetre: number
  readonly source: string
  readonly assumptions: readonly Assumption[]
}

/** Resistivity of annealed copper at 20 °C, Ω·m: 58 MS/m exactly. Source: IEC 60028. */
export const copperResistivity: number = 1 / 58e6

/** Temperature coefficient of copper resistance at 20 °C, 1/K. Source: IEC 60028. Others are in use: the IEC
 * 60228 correction table holds 0.004, and from 0 °C some textbooks take 0.0043. */
const copperCoefficient = 0.00393

/** Area of `section`, m² (OutOfRange when the gauge is not −3 to 40 or the mm² not above zero).
 * @example sectionArea({ system: 'metric', mm2: 35 }) // ≈ 35e-6 */
export const sectionArea = (section: ConductorSection): number =>
  section.system === 'awg' ? awgArea(section.n) : positive('section in mm²', section.mm2) * 1e-6

/** Resistance at `conductorC` of what measures `resistance` (Ω or Ω/m, > 0) at `referenceC` (20 °C unless
 * given; 0 to 50): R [1 + α (T − T0)]. `coefficient` α belongs to the reference temperature (copper at 20 °C
 * unless given; at most 0.005 /K). Valid −60 to 250 °C, else OutOfRange. Source: IEC 60028 for α; Bird,
 * Electrical Circuit Theory and Technology, ch. 3.
 * @example resistanceAt({ resistance: 10, conductorC: 100, coefficient: 0.004 }) // ≈ 13.2 */
export function resistanceAt(given: {
  readonly resistance: number
  readonly conductorC: number
  readonly referenceC?: number
  readonly coefficient?: number
}): number {
  const reference = inRange('reference temperature in °C', given.referenceC ?? 20, 0, 50)
  const coefficient = inRange('temperature coefficient', given.coefficient ?? copperCoefficient, 0, 0.005)
  const rise = temperature('conductor', given.conductorC) - reference
  return positive('resistance', given.resistance) * (1 + coefficient * rise)
}

/** Greatest resistance at 20 °C of a copper conductor; class 5 (flexible), tinned, unless said otherwise, as
 * boat cable is. A metric size has its IEC 60228 row. Without a row: the column's highest R·S over the
 * section, since sections of IEC 60228 are names and hold less copper than they say; but no more than the next smaller row. AWG (whatever its
 * strands): ρ/A and 2 % for stranding [common practice], and for tinned strands 3.01 % more, the widest step
 * from plain to tinned in IEC 60228 class 5. OutOfRange on a bad size.
 * @example conductorResistance({ section: { system: 'metric', mm2: 35 } }).ohmPerMetre // ≈ 0.000565 */
export function conductorResistance(given: {
  readonly section: ConductorSection
  readonly strands?: 'class 2' | 'class 5'
  readonly finish?: 'plain' | 'tinned'
}): ConductorResistance {
  const { section, strands = 'class 5', finish = 'tinned' } = given
  const area = sectionArea(section)
  const defaults: readonly Assumption[] = [
    ...(given.strands || section.system === 'awg' ? [] : [{ type: 'strands-class-5' } as const]),
    ...(given.finish ? [] : [{ type: 'copper-tinned' } as const]),
  ]
  if (section.system === 'awg') {
    return {
      ohmPerMetre: (copperResistivity / area) * 1.02 * (finish === 'tinned' ? 13.7 / 13.3 : 1),
      source: 'IEC 60028 resistivity over the ASTM B258 section',
      assumptions: [...defaults, { type: 'stranding-2-percent' }],
    }
  }
  const column = iec60228.columns.indexOf(`${strands} ${finish}`)
  const cell = (row: (typeof iec60228.rows)[number] | undefined) => row?.ohmPerKilometre[column]
  const { under, over } = rowsAround(iec60228.rows, ({ mm2 }) => mm2, section.mm2)
  const smaller = cell(under) ?? Number.POSITIVE_INFINITY
  if (under && under === over)
    return { ohmPerMetre: smaller / 1000, source: iec60228.source, assumptions: defaults }
  const worst = Math.max(...iec60228.rows.map((row) => (cell(row) ?? 0) * row.mm2))
  return {
    ohmPerMetre: Math.min((worst * 1e-9) / area, smaller / 1000),
    source: iec60228.source,
    assumptions: [...defaults, { type: 'no-row', mm2: section.mm2 }],
  }
}
