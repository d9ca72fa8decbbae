import { inRange } from '../guard.ts'
import type { Reading } from './readings.ts'

/** Which half carries the dial, and the true droop of the bar (m, 0 to 10 mm): half of what a dial zeroed
 * at top reads at the bottom of a stiff mandrel, sign dropped. */
export type DialOptions = { readonly carriedBy: 'shaft' | 'machine'; readonly droop?: number }

/** What a rim dial zeroed at top reads at an angle (rad) from the droop of its bar alone: -s (1 - cos a),
 * so -s at the sides, -2s at the bottom. The bar hangs by s: at the top the plunger is pushed in by s, at
 * the bottom let out by s. m; droop 0 to 10 mm, else OutOfRange. Source: Maintenance Scheduling for
 * Mechanical Equipment (US Bureau of Reclamation, FIST 4-1A); between the four points [derived].
 * @example sagReading(Math.PI, 5e-5) // -1e-4 */
export const sagReading = (angle: number, droop: number): number =>
  -inRange('droop of the bar (m)', droop, 0, 0.01) *
  (1 - Math.cos(inRange('angle (rad)', angle, -1000, 1000)))

/** Rim dial readings (m, + plunger pushed in) as steps of the machine rim outward of the shaft rim, droop
 * taken out.
 *
 * A dial carried by the shaft is pushed in where the machine rim stands outward: same sign. One carried by
 * the machine reads the shaft's rim, which stands inward by as much there: signs reversed. Droop belongs to
 * the bar and is taken out first in both cases. The place of the zero does not matter, it goes into the mean
 * step. Half of the total indicator reading is the offset (`fitRim`). Source: mean of several texts;
 * machine-carried [derived].
 * @example rimFromDial([{ angle: Math.PI, value: 3e-4 }], { carriedBy: 'shaft', droop: 5e-5
 * })[0].value // ≈ 4e-4 */
export function rimFromDial(
  readings: readonly Reading[],
  { carriedBy, droop = 0 }: DialOptions,
): readonly Reading[] {
  const sign = carriedBy === 'shaft' ? 1 : -1
  return readings.map(({ angle, value }) => ({ angle, value: sign * (value - sagReading(angle, droop)) }))
}

/** Face dial readings (m, + plunger pushed in) as gaps, up to a constant: the plunger touches the face that
 * looks at the dial's own half and is pushed in where the faces are nearer, whichever half carries it. Not
 * for a plunger on the back of a flange. Bar droop is neglected, as in practice (FIST 4-1A). [derived]
 * @example gapsFromDial([{ angle: Math.PI, value: 1e-4 }])[0].value // -1e-4 */
export const gapsFromDial = (readings: readonly Reading[]): readonly Reading[] =>
  readings.map(({ angle, value }) => ({ angle, value: -value }))
