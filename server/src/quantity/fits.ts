import type { Band } from './band.ts'

/** ISO 286-1 standard tolerances in micrometres, grades IT5 to IT11, for sizes up to the first figure in mm (from memory). */
const grades: readonly (readonly [number, readonly number[]])[] = [
  [3, [4, 6, 10, 14, 25, 40, 60]],
  [6, [5, 8, 12, 18, 30, 48, 75]],
  [10, [6, 9, 15, 22, 36, 58, 90]],
  [18, [8, 11, 18, 27, 43, 70, 110]],
  [30, [9, 13, 21, 33, 52, 84, 130]],
  [50, [11, 16, 25, 39, 62, 100, 160]],
  [80, [13, 19, 30, 46, 74, 120, 190]],
  [120, [15, 22, 35, 54, 87, 140, 220]],
  [180, [18, 25, 40, 63, 100, 160, 250]],
  [250, [20, 29, 46, 72, 115, 185, 290]],
]

const letters = ['h', 'H', 'js', 'JS']

/** The classes whose limits are known. */
export const fitClasses: readonly string[] = letters.flatMap((letter) =>
  [5, 6, 7, 8, 9, 10, 11].map((grade) => `${letter}${grade}`),
)

/** Limits of a shaft or hole of ISO 286 class h, H, js or JS, grades 5 to 11, sizes up to 250 mm. Metres; undefined for any other class or size.
 * Source: ISO 286-1, table of standard tolerances (from memory).
 * @example fitBand(0.035, 'h9') // { low: 0.034938, high: 0.035, nominal: 0.035 } */
export function fitBand(nominal: number, fit: string): Band | undefined {
  const match = /^([A-Za-z]+)(\d+)$/.exec(fitClasses.includes(fit) ? fit : '')
  const row = nominal > 0 ? grades.find(([upTo]) => nominal * 1000 <= upTo + 1e-9) : undefined
  const grade = row?.[1][Number(match?.[2]) - 5]
  if (!match || grade === undefined) return undefined
  const width = grade * 1e-6
  const letter = match[1]
  if (letter === 'h') return { low: nominal - width, high: nominal, nominal }
  if (letter === 'H') return { low: nominal, high: nominal + width, nominal }
  return { low: nominal - width / 2, high: nominal + width / 2, nominal }
}
