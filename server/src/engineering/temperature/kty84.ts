import { inRange } from '../guard.ts'
import { rowsAround } from '../rows.ts'

// °C and Ω of a silicon sensor KTY84-130. From 0 °C up: table of its data sheet, as transcribed in an open firmware. Below: the fit of a second open
// firmware, 603·[1 + 7.418e-3·(t - 25) + 1.815e-5·(t - 25)²], which meets the table within 0.13 % up to 280 °C (R25 from memory).
const rows: readonly (readonly [celsius: number, ohms: number])[] = [
  [-40, 358.5],
  [-30, 390.1],
  [-20, 423.8],
  [-10, 459.8],
  [0, 498],
  [10, 538],
  [20, 581],
  [30, 626],
  [40, 672],
  [50, 722],
  [60, 773],
  [70, 826],
  [80, 882],
  [90, 940],
  [100, 1000],
  [110, 1062],
  [120, 1127],
  [130, 1194],
  [140, 1262],
  [150, 1334],
  [160, 1407],
  [170, 1482],
  [180, 1560],
  [190, 1640],
  [200, 1722],
  [250, 2166],
  [300, 2624],
]

/** Where the table has rows, °C. */
export const ktyRange = { low: -40, high: 300 } as const

const across = (from: 0 | 1, to: 0 | 1, value: number): number => {
  const { under, over } = rowsAround(rows, (row) => row[from], value)
  const [start, end] = [under ?? over, over ?? under]
  if (!start || !end || start === end) return start?.[to] ?? Number.NaN
  return start[to] + ((end[to] - start[to]) * (value - start[from])) / (end[from] - start[from])
}

/** Resistance of a silicon sensor KTY84-130, Ω, at `celsius` (-40 to 300 °C, else OutOfRange). Rises with temperature; linear between rows 10 K apart, 50 K
 * above 200 °C. Source: table of its data sheet.
 * @example ktyResistance(100) // 1000 */
export const ktyResistance = (celsius: number): number =>
  across(0, 1, inRange('temperature in °C', celsius, ktyRange.low, ktyRange.high))

/** Temperature of a silicon sensor KTY84-130, °C, from its resistance `ohms` (358.5 to 2624 Ω, else OutOfRange). Source: table of its data sheet.
 * @example ktyTemperature(1000) // 100 */
export const ktyTemperature = (ohms: number): number => {
  const [first = 0, last = 0] = [rows[0]?.[1], rows.at(-1)?.[1]]
  return across(1, 0, inRange('resistance (ohm)', ohms, first, last))
}
