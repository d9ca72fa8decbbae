import { same } from '../compare.ts'
import {
  type AmpacityTable,
  isoTableA1,
  type Reading,
  type RowRead,
  readTable,
  usTable5,
} from './ampacity-tables.ts'
import type { Assumption } from './assumption.ts'
import { type ConductorSection, sectionArea } from './conductor.ts'
import {
  bundlingFactor,
  type Confidence,
  type Factor,
  heatFactor,
  machinerySpaceAmbientC,
  openAmbientC,
  type Rules,
  type Surroundings,
} from './derating.ts'

/** `in`: the tables have rows on both sides of the size. `above`: it is larger than every row, and carries at least the figure. `below`: it is
 * smaller than every row, and carries less: the figure can show that it is too thin, and never that it is thick enough. */
export type InTables = 'in' | 'above' | 'below'

export interface Ampacity {
  /** What the conductor carries where it lies, A; beyond the tables, the figure of their last row. */
  readonly amps: number
  readonly tables: InTables
  readonly table: string
  readonly source: string
  readonly confidence: Confidence
  /** Applied to the table's figure, in this order; those of 1 are left out. */
  readonly factors: readonly Factor[]
  readonly assumptions: readonly Assumption[]
}

interface Choice {
  readonly table: AmpacityTable
  readonly reading: Reading
  readonly assumptions: readonly Assumption[]
}

/** Ampacity of one copper conductor: table × factor for heat × bundling factor.
 *
 * `section` AWG: 33 CFR 183.425 Table 5. Metric: ISO 13297 Table A.1, but never above Table 5 at the same
 * section, because the ISO figures are from memory. Above the rows (150 mm², 4/0) the largest row; below them (18 AWG) the smallest, which
 * is then only an upper bound (`tables`). `insulationC` rated temperature of the insulation, °C; between columns the next lower;
 * OutOfRange below 60. `place` open air at 30 °C or a machinery space at 50 °C, unless `ambientC` states another ambient: from that of the insulation
 * on it carries nothing. `bundled` current-carrying
 * conductors together, itself included (whole, 1 up, else OutOfRange). Bundling factors
 * are those of the US: the stricter of the two sets in use.
 *
 * `rules`: with `iso` Table A.1 and its bundling factors alone, with `abyc` Table 5 and its own alone, whatever system the size is in; a size of the other
 * system is read between the rows by its section.
 * @example ampacity({ section: { system: 'awg', n: -3 }, insulationC: 105, place: 'machinery-space', bundled: 3 }).amps // ≈ 264.775 */
export function ampacity(
  given: Surroundings & {
    readonly section: ConductorSection
    readonly insulationC: number
    readonly bundled: number
    readonly rules?: Rules | undefined
  },
): Ampacity {
  const { section, insulationC, bundled, rules } = given
  const area = sectionArea(section)
  const bundle = bundlingFactor(bundled, rules)
  const heat = heatFactor(given)
  const { table, reading, assumptions } = choiceBy(rules, section, area, insulationC)
  const factors = [heat, bundle].filter(({ value }) => value !== 1)
  return {
    amps: factors.reduce((amps, factor) => amps * factor.value, reading.amps),
    tables: reading.row === 'above' || reading.row === 'below' ? reading.row : 'in',
    table: table.name,
    source: `${table.name}, ${reading.columnC} °C column${table.confidence === 'confirmed' ? '' : ', from memory'}`,
    confidence: [table, ...factors].every((part) => part.confidence === 'confirmed')
      ? 'confirmed'
      : 'from memory',
    factors,
    assumptions: [
      ...assumedOfHeat(given),
      ...(same(reading.columnC, insulationC)
        ? []
        : [{ type: 'lower-column', insulationC, columnC: reading.columnC } as const]),
      ...assumedOfRow[reading.row],
      ...assumptions,
      ...(bundled < 3 || rules ? [] : [{ type: 'bundling-us' } as const]),
      ...(bundled === 2 && rules !== 'iso' ? [{ type: 'pair-not-derated' } as const] : []),
    ],
  }
}

/** A stated ambient is no assumption, unless it is cooler than the one that counts. */
function assumedOfHeat({ place, ambientC }: Surroundings): readonly Assumption[] {
  const ofPlaceC = place === 'open' ? openAmbientC : machinerySpaceAmbientC
  if (ambientC === undefined) return [{ type: 'ambient', ambientC: ofPlaceC }]
  return ambientC < ofPlaceC ? [{ type: 'cooler-not-counted', ambientC: ofPlaceC }] : []
}

const assumedOfRow: Readonly<Record<RowRead, readonly Assumption[]>> = {
  'its own': [],
  between: [{ type: 'between-rows' }],
  above: [{ type: 'above-rows' }],
  below: [{ type: 'below-rows' }],
}

function choiceBy(
  rules: Rules | undefined,
  { system }: ConductorSection,
  area: number,
  insulationC: number,
): Choice {
  if (rules === 'iso')
    return {
      table: isoTableA1,
      reading: readTable(isoTableA1, area, insulationC),
      assumptions: [{ type: 'table-from-memory', table: isoTableA1.name }],
    }
  if (rules === 'abyc' || system === 'awg')
    return { table: usTable5, reading: readTable(usTable5, area, insulationC), assumptions: [] }
  return metricChoice(area, insulationC)
}

/** The lower of the two tables, where both reach. Thinner than the smallest ISO row that row still is a cap, so that less copper never carries
 * more; thicker than the largest row of Table 5 that row is no cap. */
function metricChoice(area: number, insulationC: number): Choice {
  const iso = readTable(isoTableA1, area, insulationC)
  const us = readTable(usTable5, area, insulationC)
  if (us.row === 'above')
    return {
      table: isoTableA1,
      reading: iso,
      assumptions: [{ type: 'table-alone', table: isoTableA1.name }],
    }
  if (us.amps < iso.amps)
    return {
      table: usTable5,
      reading: us,
      assumptions: [{ type: 'table-not-lower', table: isoTableA1.name }],
    }
  return {
    table: isoTableA1,
    reading: { ...iso, row: iso.row === 'below' ? us.row : iso.row },
    assumptions: [{ type: 'table-lower', table: isoTableA1.name, than: usTable5.name }],
  }
}
