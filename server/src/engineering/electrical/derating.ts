import { OutOfRange } from '../../quantity/out-of-range.ts'
import { reaches } from '../compare.ts'
import { temperature, whole } from '../guard.ts'
import { rowsAround } from '../rows.ts'

/** What takes ampacity off a conductor: heat around it, and other conductors beside it. */

/** A figure seen in the named text, or one that is believed right and was not seen. */
export type Confidence = 'confirmed' | 'from memory'

export interface Factor {
  readonly name: string
  readonly value: number
  readonly source: string
  readonly confidence: Confidence
}

/** Ambient of the ampacity tables, and of a machinery space, °C. Source: 33 CFR 183.425 Table 5 and its note
 * 1. */
export const openAmbientC = 30
export const machinerySpaceAmbientC = 50

/** Ampacity at `ambientC` over that at `tableC` (30 unless given) for insulation of `insulationC`: √((Tc −
 * Ta') / (Tc − Ta)). OutOfRange unless the insulation is warmer than both. Source: the law behind NEC Table
 * 310.15(B)(2)(b).
 * @example ambientFactor({ insulationC: 90, ambientC: 50, tableC: 40 }) // ≈ 0.894 */
export function ambientFactor(given: {
  readonly insulationC: number
  readonly ambientC: number
  readonly tableC?: number
}): number {
  const insulation = temperature('insulation', given.insulationC)
  const ambient = temperature('ambient', given.ambientC)
  const table = temperature('ambient of the table', given.tableC ?? openAmbientC)
  if (insulation <= Math.max(ambient, table)) {
    throw new OutOfRange(
      `insulation of ${insulation} °C carries nothing in ambient of ${Math.max(ambient, table)} °C`,
    )
  }
  return Math.sqrt((insulation - ambient) / (insulation - table))
}

/** Rules for an install: ISO 13297 and 10133, or ABYC E-11 with 33 CFR 183. Tables and factors of the two are never mixed. */
export type Rules = 'iso' | 'abyc'

const byLaw = (insulationC: number): Omit<Factor, 'name'> => ({
  value: ambientFactor({ insulationC, ambientC: machinerySpaceAmbientC }),
  source: '√((Tc − 50) / (Tc − 30))',
  confidence: 'confirmed',
})
const note1 = (value: number, confidence: Confidence): Omit<Factor, 'name'> => ({
  value,
  source: '33 CFR 183.425 Table 5 note 1',
  confidence,
})

/** Note 1 where it agrees with the general law. 70 and 85 °C have no column there, and ISO 10133 (0.75, 0.82
 * from memory) is above the law; at 200 °C note 1 says 1.00, which the law does not bear out: the law is
 * taken, the safer figure. */
const machinerySpace: readonly (readonly [insulationC: number, factor: Omit<Factor, 'name'>])[] = [
  [60, note1(0.58, 'from memory')],
  [70, byLaw(70)],
  [75, note1(0.75, 'from memory')],
  [80, note1(0.78, 'from memory')],
  [85, byLaw(85)],
  [90, note1(0.82, 'from memory')],
  [105, note1(0.85, 'confirmed')],
  [125, note1(0.89, 'from memory')],
  [200, byLaw(200)],
]

/** Factor on ampacity in a machinery space (50 °C instead of 30 °C) for insulation of `insulationC`; between
 * the listed classes the next lower. OutOfRange below 60 °C. Source: 33 CFR 183.425 Table 5 note 1, or the
 * general law. By ISO rules always the law: their own factors are from memory and up to 0.06 above it.
 * @example machinerySpaceFactor(105).value // 0.85 */
export function machinerySpaceFactor(insulationC: number, rules?: Rules): Factor {
  if (rules === 'iso') {
    const { under } = rowsAround(isoColumnsC, (listed) => listed, temperature('insulation', insulationC))
    if (under === undefined) throw new OutOfRange(`insulation must be of 60 °C or more, not ${insulationC}`)
    return { name: 'machinery space', ...byLaw(under) }
  }
  const { under } = rowsAround(machinerySpace, ([listed]) => listed, temperature('insulation', insulationC))
  const factor = under?.[1]
  if (!factor) throw new OutOfRange(`insulation must be of 60 °C or more, not ${insulationC}`)
  return { name: 'machinery space', ...factor }
}

/** Where a conductor lies, and the ambient there in °C, where it is known. */
export interface Surroundings {
  readonly place: 'open' | 'machinery-space'
  readonly ambientC?: number | undefined
}

/** Factor on ampacity for the heat around a conductor with insulation of `insulationC`, 60 °C or more, else OutOfRange. Without `ambientC` that of the
 * place. With it the general law from the 30 °C of the tables, 0 where the insulation is no warmer than the ambient; but never above 1, nor above the
 * factor of a machinery space in one, or at its 50 °C. The two are never multiplied. Source: as `ambientFactor` and `machinerySpaceFactor`.
 * @example heatFactor({ insulationC: 105, place: 'open', ambientC: 55 }).value // ≈ 0.8165 */
export function heatFactor({
  insulationC,
  place,
  ambientC,
  rules,
}: Surroundings & { readonly insulationC: number; readonly rules?: Rules | undefined }): Factor {
  const inSpace = machinerySpaceFactor(insulationC, rules)
  const open: Factor = { name: 'ambient', value: 1, source: 'air of 30 °C', confidence: 'confirmed' }
  const ofPlace = place === 'open' ? open : inSpace
  if (ambientC === undefined) return ofPlace
  const insulation = temperature('insulation', insulationC)
  const ambient = temperature('ambient', ambientC)
  const value = reaches(ambient, insulation) ? 0 : ambientFactor({ insulationC, ambientC: ambient })
  const most = ambient >= machinerySpaceAmbientC ? inSpace : ofPlace
  return value < most.value
    ? { name: 'ambient', value, source: '√((Tc − Ta) / (Tc − 30))', confidence: 'confirmed' }
    : most
}

/** Classes of ISO 13297 Table A.1, from memory. */
const isoColumnsC = [60, 70, 85, 105, 125, 200]

/** Source: ISO 13297, from memory; that it begins at four conductors is confirmed by a public guide. */
const isoBundling = [
  [1, 1],
  [4, 0.7],
  [7, 0.6],
  [25, 0.5],
] as const

/** Source: 33 CFR 183.425 Table 5 note 2; the US set, which starts at three conductors. The set of ISO 13297 (0.7 from four, 0.6 from seven, 0.5 from
 * 25; from memory) is less strict, and the two must not be mixed. */
const bundling = [
  [1, 1],
  [3, 0.7],
  [4, 0.6],
  [7, 0.5],
  [25, 0.4],
] as const

/** Factor on ampacity for `conductors` current-carrying conductors in one bundle, duct or sheath (a three-phase cable is 3); OutOfRange unless a
 * whole number of 1 to 1000. The federal rule binds from 50 V up; we apply it at any voltage. Source: 33 CFR 183.425 Table 5 note 2.
 * By ISO rules their own set, which begins at four conductors.
 * @example bundlingFactor(3).value // 0.7 */
export function bundlingFactor(conductors: number, rules?: Rules): Factor {
  const count = whole('conductors in the bundle', conductors, 1, 1000)
  if (rules === 'iso')
    return {
      name: 'bundling',
      value: rowsAround(isoBundling, ([from]) => from, count).under?.[1] ?? 1,
      source: 'ISO 13297, from memory',
      confidence: 'from memory',
    }
  return {
    name: 'bundling',
    value: rowsAround(bundling, ([from]) => from, count).under?.[1] ?? 1,
    source: '33 CFR 183.425 Table 5 note 2',
    confidence: 'confirmed',
  }
}
