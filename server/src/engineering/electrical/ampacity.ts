import { same } from '../compare.ts'
import { type AmpacityTable, isoTableA1, type Reading, readTable, usTable5 } from './ampacity-tables.ts'
import { type ConductorSection, sectionArea } from './conductor.ts'
import {
  bundlingFactor,
  type Confidence,
  type Factor,
  machinerySpaceAmbientC,
  machinerySpaceFactor,
  openAmbientC,
} from './derating.ts'

export interface Ampacity {
  /** What the conductor carries where it lies, A. */
  readonly amps: number
  readonly table: string
  readonly source: string
  readonly confidence: Confidence
  /** Applied to the table's figure, in this order; those of 1 are left out. */
  readonly factors: readonly Factor[]
  readonly assumptions: readonly string[]
}

/** The size is smaller or larger than every row of the tables. */
export interface NoTableRow {
  readonly fault: 'no-table-row'
  readonly area: number
}

interface Choice {
  readonly table: AmpacityTable
  readonly reading: Reading
  readonly assumptions: readonly string[]
}

/** Ampacity of one copper conductor: table × machinery-space factor × bundling factor.
 *
 * `section` AWG: 33 CFR 183.425 Table 5. Metric: ISO 13297 Table A.1, but never above Table 5 at the same
 * section, because the ISO figures are from memory. Beyond the rows (metric above 150 mm², AWG above 4/0):
 * `no-table-row`. `insulationC` rated temperature of the insulation, °C; between columns the next lower;
 * RangeError below 60. `place` open air at 30 °C or a machinery space at 50 °C. `bundled` current-carrying
 * conductors together, itself included (whole, 1 up, else RangeError). Bundling factors
 * are those of the US: the stricter of the two sets in use.
 * @example ampacity({ section: { system: 'awg', n: -3 }, insulationC: 105, place: 'machinery-space', bundled: 3 }).amps // ≈ 264.775 */
export function ampacity(given: {
  readonly section: ConductorSection
  readonly insulationC: number
  readonly place: 'open' | 'machinery-space'
  readonly bundled: number
}): Ampacity | NoTableRow {
  const { section, insulationC, place, bundled } = given
  const area = sectionArea(section)
  const bundle = bundlingFactor(bundled)
  const heat = machinerySpaceFactor(insulationC)
  const choice = section.system === 'awg' ? awgChoice(area, insulationC) : metricChoice(area, insulationC)
  if (!choice) return { fault: 'no-table-row', area }
  const { table, reading } = choice
  const factors = [...(place === 'open' ? [] : [heat]), ...(bundle.value === 1 ? [] : [bundle])]
  return {
    amps: factors.reduce((amps, factor) => amps * factor.value, reading.amps),
    table: table.name,
    source: `${table.name}, ${reading.columnC} °C column${table.confidence === 'confirmed' ? '' : ', from memory'}`,
    confidence: [table, ...factors].every((part) => part.confidence === 'confirmed')
      ? 'confirmed'
      : 'from memory',
    factors,
    assumptions: [
      `ambient is ${place === 'open' ? openAmbientC : machinerySpaceAmbientC} °C`,
      ...(same(reading.columnC, insulationC)
        ? []
        : [`${insulationC} °C insulation is read in the ${reading.columnC} °C column`]),
      ...(reading.between ? ['the size lies between two rows of the table: interpolated by section'] : []),
      ...choice.assumptions,
      ...(bundled < 3 ? [] : ['bundling factors are the US set, the stricter of the two in use']),
      ...(bundled === 2
        ? ['two conductors together are not derated; recent ABYC E-11 derates DC pairs']
        : []),
    ],
  }
}

function awgChoice(area: number, insulationC: number): Choice | undefined {
  const reading = readTable(usTable5, area, insulationC)
  return reading && { table: usTable5, reading, assumptions: [] }
}

/** The lower of the two tables. Thinner than the smallest ISO row that row still is a cap, so that less
 * copper never carries more. */
function metricChoice(area: number, insulationC: number): Choice | undefined {
  const iso = readTable(isoTableA1, Math.max(area, isoTableA1.rows[0]?.area ?? area), insulationC)
  const us = readTable(usTable5, area, insulationC)
  if (us && (!iso || us.amps < iso.amps)) {
    return {
      table: usTable5,
      reading: us,
      assumptions: [`${isoTableA1.name} is from memory and not lower: not used`],
    }
  }
  if (!iso || area < (usTable5.rows[0]?.area ?? area)) return undefined
  const check = us ? `lower than ${usTable5.name}` : 'no other table reaches this size to hold it against'
  return { table: isoTableA1, reading: iso, assumptions: [`${isoTableA1.name} is from memory; ${check}`] }
}
