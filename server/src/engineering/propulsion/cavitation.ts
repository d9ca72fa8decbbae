import { inRange, positive, whole } from '../guard.ts'
import { vapourPressure } from './water.ts'

const atmosphere = 101_325
const gravity = 9.80665

/** Least expanded blade area ratio AE/A0 against cavitation: (1.3 + 0.3 Z) T / ((p0 − pv) D²) + k, with k 0.2 for one screw and 0.1 for two. `thrust` N,
 * `diameter` and `depth` of the middle of the propeller in m, `density` kg/m³, water in °C. p0 is the pressure of air and water at the shaft. Source: Keller
 * 1966, as in textbooks of ship propellers [from memory].
 * @example kellerAreaRatio({ thrust: 50e3, diameter: 1.5, blades: 4, depth: 1.5, density: 1025.9, celsius: 15, screws: 1 }) // ≈ 0.6843 */
export function kellerAreaRatio(given: {
  readonly thrust: number
  readonly diameter: number
  readonly blades: number
  readonly depth: number
  readonly density: number
  readonly celsius: number
  readonly screws: number
}): number {
  const { depth, density, celsius } = given
  const pressure =
    atmosphere +
    positive('density of the water', density) *
      gravity *
      inRange('depth of the propeller (m)', depth, 0, 100) -
    vapourPressure(celsius)
  const blades = 1.3 + 0.3 * whole('number of blades', given.blades, 2, 9)
  const disc = positive('diameter of the propeller', given.diameter) ** 2
  return (
    (blades * inRange('thrust (N)', given.thrust, 0, 1e8)) / (pressure * disc) +
    (whole('number of screws', given.screws, 1, 100) === 1 ? 0.2 : 0.1)
  )
}
