import { circle, gaugeDiameter, gaugeRatio, smallestGauge } from '../../quantity/wire-gauge.ts'
import { positive, whole } from '../guard.ts'

/** American wire gauge by ASTM B258: 36 AWG is 0.005 in and 4/0 is 0.460 in by definition, 39 equal ratios
 * between. Gauge numbers are signed: 0 is 1/0, −1 is 2/0, −2 is 3/0, −3 is 4/0. An "SAE gauge" cable is
 * another thing: 4 to 12 % smaller than the AWG of the same number. */

/** Diameter of solid wire of gauge `n` (whole, −3 to 40, else OutOfRange), m. Source: ASTM B258.
 * @example awgDiameter(-3) // ≈ 0.011684 */
export const awgDiameter = (n: number): number => gaugeDiameter(whole('AWG number', n, -3, 40))

/** Copper section of gauge `n` (whole, −3 to 40, else OutOfRange), m². Source: ASTM B258.
 * @example awgArea(-1) // ≈ 67.43e-6 */
export const awgArea = (n: number): number => circle(awgDiameter(n))

/** Gauge number whose section is `area` (m², > 0, else OutOfRange), between whole gauges as a fraction; round
 * up to stay at or below the section. Source: ASTM B258, solved for n.
 * @example awgFromArea(67.43e-6) // ≈ -1.0 */
export const awgFromArea = (area: number): number =>
  36 - Math.log(positive('section', area) / circle(smallestGauge)) / (2 * Math.log(gaugeRatio))
