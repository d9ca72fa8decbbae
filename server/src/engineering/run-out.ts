import { reaches } from './compare.ts'
import { positive } from './guard.ts'

type Where = 'shaft' | 'face' | 'register'

/** From above the first to the second diameter, m: largest total reading of the dial, m. */
const shafts = [
  [0.01, 0.018, 35e-6],
  [0.018, 0.03, 40e-6],
  [0.03, 0.05, 50e-6],
  [0.05, 0.08, 60e-6],
] as const
const registers = [
  [0.04, 0.1, 80e-6],
  [0.1, 0.23, 100e-6],
  [0.23, 0.45, 125e-6],
] as const

/** Largest run-out of a machine, m, as total reading of the dial in one turn: of its shaft end by the `diameter` of that, of face and register by the `diameter` of the
 * register (m, > 0). Above the rows the last one counts, which is stricter; undefined below them. Normal class; the reduced class is half of it. Source: IEC 60072-1 in
 * EASA AR100-2015/2020, tables 2-4, 2-10, 2-11.
 * @example runOutLimit({ where: 'shaft', diameter: 0.038 }) // 50e-6 */
export function runOutLimit(given: { readonly where: Where; readonly diameter: number }): number | undefined {
  const rows = given.where === 'shaft' ? shafts : registers
  const diameter = positive('diameter (m)', given.diameter)
  if (reaches(rows[0][0], diameter)) return undefined
  return (rows.find(([, to]) => reaches(to, diameter)) ?? rows.at(-1))?.[2]
}
