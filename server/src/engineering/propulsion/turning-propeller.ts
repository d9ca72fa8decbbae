import { inRange, positive } from '../guard.ts'
import { bisect } from './bisect.ts'
import {
  type OpenWater,
  openWaterEfficiency,
  thrustCoefficient,
  torqueCoefficient,
} from './propeller-series.ts'

/** A propeller in its water. */
export interface Propeller {
  readonly openWater: OpenWater
  /** m */
  readonly diameter: number
  /** Of the water, kg/m³. */
  readonly density: number
}

/** How a propeller turns, and what that takes. SI; `speed` in rad/s. */
export interface Turning {
  readonly speed: number
  /** Advance ratio J. */
  readonly advance: number
  readonly thrust: number
  readonly torque: number
  /** At the propeller: torque times speed. */
  readonly power: number
  /** Of the propeller alone. */
  readonly efficiency: number
}

const turn = 2 * Math.PI

/** Speed, rad/s, at which a propeller gives no thrust any more while water flows in at `inflow` m/s (0 to 100, else OutOfRange).
 * @example idleSpeed({ openWater: openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }), diameter: 0.5, density: 1025 }, 2) // ≈ 22.968 */
export const idleSpeed = ({ openWater, diameter }: Propeller, inflow: number): number =>
  (turn * inRange('speed of the inflow (m/s)', inflow, 0, 100)) /
  (openWater.zeroThrust * positive('diameter of the propeller', diameter))

/** Thrust and torque of a propeller that turns at `speed` (rad/s, above `idleSpeed`, else OutOfRange) in water that flows in at `inflow` (m/s): T = KT ρ n²
 * D⁴, Q = KQ ρ n² D⁵, n in turns per second. Source: definition of KT and KQ.
 * @example turningAt({ openWater: openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }), diameter: 0.5, density: 1000 }, 3, 62.832).thrust // ≈ 1396.2 */
export function turningAt(propeller: Propeller, inflow: number, speed: number): Turning {
  const { openWater, diameter, density } = propeller
  const slowest = Math.max(1e-9, idleSpeed(propeller, inflow) * (1 - 1e-9))
  const n = inRange('speed of the propeller (rad/s)', speed, slowest, 1e5) / turn
  const advance = Math.min(openWater.zeroThrust, inflow / (n * diameter))
  const pressure = positive('density of the water', density) * n ** 2 * diameter ** 4
  const torque = torqueCoefficient(openWater, advance) * pressure * diameter
  return {
    speed,
    advance,
    thrust: thrustCoefficient(openWater, advance) * pressure,
    torque,
    power: torque * speed,
    efficiency: openWaterEfficiency(openWater, advance),
  }
}

/** How a propeller must turn to give `thrust` (N, 0 to 1e8) in water that flows in at `inflow` (m/s); one of the two above 0, else OutOfRange. Thrust rises
 * with speed, so there is one such speed. Source: see `turningAt`; bisection.
 * @example turningFor({ openWater: openWater({ blades: 4, areaRatio: 0.5, pitchRatio: 1 }), diameter: 0.5, density: 1000 }, 3, 1396.2).speed // ≈ 62.832 */
export function turningFor(propeller: Propeller, inflow: number, thrust: number): Turning {
  inRange('thrust (N)', thrust, 0, 1e8)
  const idle = idleSpeed(propeller, inflow)
  const shortfall = (speed: number): number => turningAt(propeller, inflow, speed).thrust - thrust
  let high = Math.max(1e-3, 2 * idle)
  while (shortfall(high) < 0) high *= 2
  const low = Math.max(1e-9, idle)
  return turningAt(propeller, inflow, Math.max(low, bisect(shortfall, low, high)))
}

/** Slip as it is read on board: 1 − V / (P n), with the speed of the boat (m/s), the pitch (m) and the speed of the propeller (rad/s), both above 0, else
 * OutOfRange. Source: definition.
 * @example apparentSlip({ boatSpeed: 5.1444, pitch: 3.8, speed: 9.1106 }) // ≈ 0.0663 */
export const apparentSlip = (given: {
  readonly boatSpeed: number
  readonly pitch: number
  readonly speed: number
}): number =>
  1 -
  inRange('speed of the boat (m/s)', given.boatSpeed, 0, 100) /
    ((positive('pitch', given.pitch) * positive('speed of the propeller', given.speed)) / turn)
