import { OutOfRange } from '../../quantity/out-of-range.ts'
import { temperature } from '../guard.ts'
import { rowsAround } from '../rows.ts'
import { type ConductorSection, sectionArea } from './conductor.ts'
import type { Confidence } from './derating.ts'

/** Ampacity of single copper conductors in air of 30 °C: the tables as printed, and how to read between their
 * lines. */
export interface AmpacityTable {
  readonly name: string
  readonly confidence: Confidence
  /** One column an insulation class, °C, rising. */
  readonly columnsC: readonly number[]
  /** By rising section; A. */
  readonly rows: readonly { readonly area: number; readonly amps: readonly number[] }[]
}

type Line = readonly [size: number, ...amps: readonly number[]]

const rows = (lines: readonly Line[], size: (line: number) => ConductorSection): AmpacityTable['rows'] =>
  lines.map(([label, ...amps]) => ({ area: sectionArea(size(label)), amps }))

/** Law for boats with installed gasoline engines; used here as a public table. Its 105 °C column is that of
 * ABYC E-11. */
export const usTable5: AmpacityTable = {
  name: '33 CFR 183.425 Table 5',
  confidence: 'confirmed',
  columnsC: [60, 75, 80, 90, 105, 125, 200],
  rows: rows(
    [
      [18, 10, 10, 15, 20, 20, 25, 25],
      [16, 15, 15, 20, 25, 25, 30, 35],
      [14, 20, 20, 25, 30, 35, 40, 45],
      [12, 25, 25, 35, 40, 45, 50, 55],
      [10, 40, 40, 50, 55, 60, 70, 70],
      [8, 55, 65, 70, 70, 80, 90, 100],
      [6, 80, 95, 100, 100, 120, 125, 135],
      [4, 105, 125, 130, 135, 160, 170, 180],
      [3, 120, 145, 150, 155, 180, 195, 210],
      [2, 140, 170, 175, 180, 210, 225, 240],
      [1, 165, 195, 210, 210, 245, 265, 280],
      [0, 195, 230, 245, 245, 285, 305, 325],
      [-1, 225, 265, 285, 285, 330, 355, 370],
      [-2, 260, 310, 330, 330, 385, 410, 430],
      [-3, 300, 360, 385, 385, 445, 475, 510],
    ],
    (n) => ({ system: 'awg', n }),
  ),
}

/** The same in ISO 10133:2012 (withdrawn). No public text shows the figures: the whole table is from memory,
 * and the 16 mm² cell at 125 °C is suspect. The 85 °C column serves 85 to 90 °C. */
export const isoTableA1: AmpacityTable = {
  name: 'ISO 13297 Table A.1',
  confidence: 'from memory',
  columnsC: [60, 70, 85, 105, 125, 200],
  rows: rows(
    [
      [1.5, 12, 18, 21, 25, 30, 40],
      [2.5, 17, 25, 30, 35, 40, 45],
      [4, 22, 35, 40, 45, 50, 55],
      [6, 29, 45, 50, 60, 70, 75],
      [10, 40, 65, 70, 90, 100, 120],
      [16, 54, 90, 100, 130, 150, 170],
      [25, 71, 120, 140, 170, 185, 200],
      [35, 87, 160, 185, 210, 225, 240],
      [50, 105, 210, 230, 270, 300, 325],
      [70, 135, 265, 285, 330, 360, 375],
      [95, 165, 310, 330, 390, 410, 430],
      [120, 190, 360, 400, 450, 480, 520],
      [150, 220, 380, 430, 475, 520, 560],
    ],
    (mm2) => ({ system: 'metric', mm2 }),
  ),
}

/** The best insulation that the tables have a column for, °C. */
export const bestInsulationC = Math.max(...usTable5.columnsC, ...isoTableA1.columnsC)

/** `between`: interpolated in proportion to the section. `above`: larger than every row, so the figure is that of the largest and the conductor
 * carries at least that. `below`: smaller than every row, so the figure is that of the smallest and the conductor carries less. */
export type RowRead = 'its own' | 'between' | 'above' | 'below'

export interface Reading {
  readonly amps: number
  readonly columnC: number
  readonly row: RowRead
}

/** What `table` says for a conductor of `area` (m²) and `insulationC`: the next lower column, and between
 * rows in proportion to the section. Beyond the rows the figure of the last one, never more: nothing is extrapolated. OutOfRange below
 * the lowest column.
 * @example readTable(usTable5, 107.219e-6, 105).amps // ≈ 445 */
export function readTable(table: AmpacityTable, area: number, insulationC: number): Reading {
  const { under: columnC } = rowsAround(table.columnsC, (c) => c, temperature('insulation', insulationC))
  if (columnC === undefined) throw new OutOfRange(`insulation must be of 60 °C or more, not ${insulationC}`)
  const column = table.columnsC.indexOf(columnC)
  const { under, over } = rowsAround(table.rows, (row) => row.area, area)
  const [low, high] = [under?.amps[column], over?.amps[column]]
  if (low === undefined) return { amps: high ?? 0, columnC, row: 'below' }
  if (high === undefined) return { amps: low, columnC, row: 'above' }
  if (!under || !over || under === over) return { amps: low, columnC, row: 'its own' }
  const share = (area - under.area) / (over.area - under.area)
  return { amps: low + share * (high - low), columnC, row: 'between' }
}
