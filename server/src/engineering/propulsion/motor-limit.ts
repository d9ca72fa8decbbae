import { betweenPoints, type CurvePoint } from '../between-points.ts'
import { inRange, positive } from '../guard.ts'

/** What a motor can give all the time. Torques in N·m, speeds in rad/s, at its own shaft. */
export interface MotorLimit {
  readonly ratedTorque: number
  readonly ratedSpeed: number
  readonly maxSpeed: number
  /** Torque over speed as its maker states it, instead of the two lines of a rated point. */
  readonly curve?: readonly CurvePoint[]
  /** Share of the torque that the current of its controller allows, above 0 and at most 1. */
  readonly share: number
}

/** The speeds between which something is known of a motor, rad/s: from rest to its highest speed, or as far as its curve goes.
 * @example motorSpeeds({ ratedTorque: 95, ratedSpeed: 157, maxSpeed: 250, share: 1 }) // { low: 0, high: 250 } */
export function motorSpeeds({ curve, maxSpeed }: MotorLimit): {
  readonly low: number
  readonly high: number
} {
  const [first, last] = [curve?.at(0), curve?.at(-1)]
  return { low: first?.at ?? 0, high: Math.min(maxSpeed, last?.at ?? maxSpeed) }
}

/** Continuous torque of a motor, N·m, at a speed in rad/s; 0 outside `motorSpeeds`. Without a curve: rated torque up to the rated speed, rated power above.
 * What the controller's current allows is taken as a share of that: the torque of a motor goes with its current. Source: definition of constant torque
 * and constant power.
 * @example continuousTorque({ ratedTorque: 95, ratedSpeed: 150, maxSpeed: 300, share: 1 }, 300) // 47.5 */
export function continuousTorque(motor: MotorLimit, speed: number): number {
  const { low, high } = motorSpeeds(motor)
  positive('rated torque of the motor', motor.ratedTorque)
  positive('rated speed of the motor', motor.ratedSpeed)
  inRange('share of the torque', motor.share, 1e-6, 1)
  if (!(speed >= low * (1 - 1e-9) && speed <= high * (1 + 1e-9))) return 0
  const torque = motor.curve
    ? betweenPoints(motor.curve, Math.min(high, Math.max(low, speed)))
    : motor.ratedTorque * Math.min(1, motor.ratedSpeed / speed)
  return motor.share * (torque ?? 0)
}

/** Continuous torque of a motor, N·m, as `continuousTorque` says, but undefined where nothing is known of it: before its curve begins, or between the end of
 * its curve and its highest speed. 0 above its highest speed. Source: see `continuousTorque`.
 * @example knownTorque({ ratedTorque: 95, ratedSpeed: 150, maxSpeed: 300, share: 1, curve: [{ at: 0, value: 95 }, { at: 200, value: 70 }] }, 250) // undefined */
export function knownTorque(motor: MotorLimit, speed: number): number | undefined {
  const { low, high } = motorSpeeds(motor)
  if (speed > motor.maxSpeed * (1 + 1e-9)) return 0
  return speed >= low * (1 - 1e-9) && speed <= high * (1 + 1e-9) ? continuousTorque(motor, speed) : undefined
}
