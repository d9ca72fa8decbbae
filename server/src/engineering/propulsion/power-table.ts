import type { Bound } from '../../quantity/conformity.ts'
import { greatest } from '../../quantity/extremes.ts'
import { fraction, inRange, positive } from '../guard.ts'
import { firstCrossing } from './bisect.ts'
import { continuousTorque, type MotorLimit, motorSpeeds } from './motor-limit.ts'
import { openWater } from './propeller-series.ts'
import { type HullResistance, hullResistance, resistanceRange } from './resistance.ts'
import {
  apparentSlip,
  idleSpeed,
  type Propeller,
  type Turning,
  turningAt,
  turningFor,
} from './turning-propeller.ts'
import type { Water } from './water.ts'

// Hull, propellers and motors in balance. SI: m, s, kg, N, rad/s.

export interface DriveInput {
  readonly diameter: number
  readonly pitch: number
  readonly blades: number
  readonly areaRatio: number
  readonly wake: number
  readonly thrustDeduction: number
  /** Turns of the motor for one turn of the propeller. */
  readonly ratio: number
  /** Of gear and shaft line together. */
  readonly efficiency: number
  /** Absent: how the motor is limited is not known. */
  readonly motor?: MotorLimit
}

export interface PowerInput {
  readonly water: Water
  /** Absent: only what needs no hull is worked out. */
  readonly hull?: HullResistance
  /** What is added to the resistance in calm water, as a share of it. */
  readonly margin: number
  readonly drives: readonly DriveInput[]
  /** Speeds that are asked for, besides those of the table. */
  readonly speeds: readonly number[]
}

/** A propeller that turns, with its motor. */
export interface DriveState extends Turning {
  readonly motorSpeed: number
  readonly motorTorque: number
  /** At the shaft of the motor. */
  readonly motorPower: number
  readonly slip: number
}

/** What a motor can do at the most, all the time. */
export interface FullAhead extends DriveState {
  /** What keeps it from turning faster: its torque, its highest speed, or that nothing is known of it beyond the end of its curve. */
  readonly limitedBy: 'torque' | 'speed' | 'curve'
}

export interface PowerRow {
  readonly boatSpeed: number
  /** With the margin. */
  readonly resistance: number
  readonly drives: readonly DriveState[]
}

export interface PowerTable {
  /** In the order of the drives; absent where the motor is not known, or is too weak to turn the propeller within its curve. */
  readonly bollard: readonly (FullAhead | undefined)[]
  /** The highest speed that all drives together hold all the time, with the propellers as they turn then. */
  readonly top?: {
    readonly boatSpeed: number
    readonly bound?: Bound
    readonly drives: readonly FullAhead[]
    /** What holds the drive that has no more to give; absent with a bound. */
    readonly limitedBy?: FullAhead['limitedBy']
  }
  /** Up to the top speed. */
  readonly rows: readonly PowerRow[]
  /** At the speeds asked for; absent where the resistance is not known there. */
  readonly asked: readonly (PowerRow | undefined)[]
}

const knot = 1852 / 3600
/** Steps in which the first balance of torques, or of forces, is looked for. */
const torqueSteps = 60
const speedSteps = 48

const propellerOf = ({ diameter, pitch, blades, areaRatio }: DriveInput, water: Water): Propeller => ({
  openWater: openWater({
    blades,
    areaRatio,
    pitchRatio: positive('pitch', pitch) / positive('diameter of the propeller', diameter),
  }),
  diameter,
  density: water.density,
})

/** A drive made ready: its propeller is worked out once. */
interface Drive {
  readonly input: DriveInput
  readonly propeller: Propeller
  readonly inflow: (boatSpeed: number) => number
}

function driveOf(input: DriveInput, water: Water): Drive {
  const wake = inRange('wake fraction', input.wake, -0.5, 0.9)
  inRange('thrust deduction', input.thrustDeduction, -0.5, 0.9)
  positive('gear ratio', input.ratio)
  fraction('efficiency of the gear', input.efficiency)
  return { input, propeller: propellerOf(input, water), inflow: (speed) => speed * (1 - wake) }
}

function stateOf({ input }: Drive, boatSpeed: number, turning: Turning): DriveState {
  const motorSpeed = turning.speed * input.ratio
  const motorTorque = turning.torque / (input.ratio * input.efficiency)
  return {
    ...turning,
    motorSpeed,
    motorTorque,
    motorPower: motorTorque * motorSpeed,
    slip: apparentSlip({ boatSpeed, pitch: input.pitch, speed: turning.speed }),
  }
}

/** How the propeller turns where the motor gives all it can at a speed of the boat; undefined where that is not known or comes to no thrust. */
function fullAheadOf(drive: Drive, boatSpeed: number): FullAhead | undefined {
  const { input, propeller } = drive
  const { motor, ratio, efficiency } = input
  if (!motor) return undefined
  const inflow = drive.inflow(boatSpeed)
  const { low, high } = motorSpeeds(motor)
  const fastest = high / ratio
  const slowest = Math.max(low / ratio, idleSpeed(propeller, inflow), 1e-3 * fastest)
  if (!(slowest < fastest)) return undefined
  const overload = (speed: number): number =>
    turningAt(propeller, inflow, speed).torque - continuousTorque(motor, speed * ratio) * ratio * efficiency
  if (overload(slowest) >= 0) return undefined
  const crossing = firstCrossing(overload, slowest, fastest, torqueSteps)
  const turning = turningAt(propeller, inflow, crossing ?? fastest)
  const held = high < motor.maxSpeed * (1 - 1e-9) ? 'curve' : 'speed'
  return { ...stateOf(drive, boatSpeed, turning), limitedBy: crossing === undefined ? held : 'torque' }
}

/** Thrust that one of the drives has to give, N. */
const thrustWanted = ({ input }: Drive, resistance: number, drives: number): number =>
  resistance / (drives * (1 - input.thrustDeduction))

/** Steps of the table, kn, so that it has at most some twenty rows. */
const stepFor = (top: number): number => [0.5, 1, 2, 5].find((step) => top / knot / step <= 20) ?? 10

function topOf(
  drives: readonly Drive[],
  { low, high }: { readonly low: number; readonly high: number },
  resistance: (speed: number) => number | undefined,
): PowerTable['top'] {
  if (drives.some(({ input }) => !input.motor)) return undefined
  /** By how much each drive falls short of what is wanted of it, N. */
  const shortfalls = (speed: number): readonly number[] =>
    drives.map(
      (drive) =>
        thrustWanted(drive, resistance(speed) ?? Number.NaN, drives.length) -
        (fullAheadOf(drive, speed)?.thrust ?? 0),
    )
  /** Of the drive that comes nearest to its limit. */
  const shortfall = (speed: number): number => greatest(shortfalls(speed)) ?? Number.NaN
  const crossing = firstCrossing(shortfall, low, high, speedSteps)
  const boatSpeed = crossing ?? high
  const full = drives.flatMap((drive) => fullAheadOf(drive, boatSpeed) ?? [])
  const bound = crossing === undefined ? 'at-least' : crossing === low ? 'less-than' : undefined
  const shortest = shortfalls(boatSpeed)
  const weakest = drives[shortest.indexOf(greatest(shortest) ?? Number.NaN)]
  const limitedBy = bound || !weakest ? undefined : fullAheadOf(weakest, boatSpeed)?.limitedBy
  return { boatSpeed, ...(bound && { bound }), drives: full, ...(limitedBy && { limitedBy }) }
}

/** The balance of a hull with its propellers and motors, over the speed of the boat: each drive gives an equal share of the resistance, T = R (1 + margin) /
 * (N (1 − t)), in water that flows in at V (1 − w). The top speed is the lowest at which a drive has no more to give; bollard is at rest. `drives` at least one,
 * figures outside what `openWater` and the others allow: OutOfRange. Source: textbooks of ship propulsion.
 * @example powerTable({ water: waterOf('sea', 15), margin: 0, speeds: [], drives: [{ diameter: 0.42, pitch: 0.3, blades: 3, areaRatio: 0.5, wake: 0.1, thrustDeduction: 0.1, ratio: 2.5, efficiency: 0.95 }] }).rows // [] */
export function powerTable(given: PowerInput): PowerTable {
  const { hull, water, margin } = given
  inRange('margin on the resistance', margin, 0, 10)
  inRange('number of drives', given.drives.length, 1, 100)
  const drives = given.drives.map((input) => driveOf(input, water))
  const bollard = drives.map((drive) => fullAheadOf(drive, 0))
  if (!hull) return { bollard, rows: [], asked: given.speeds.map(() => undefined) }
  const resistance = (speed: number): number | undefined => {
    const calm = hullResistance(hull, water, speed)
    return calm === undefined ? undefined : calm * (1 + margin)
  }
  const rowAt = (boatSpeed: number): PowerRow | undefined => {
    const found = resistance(boatSpeed)
    if (found === undefined) return undefined
    const states = drives.map((drive) => {
      const thrust = thrustWanted(drive, found, drives.length)
      return stateOf(drive, boatSpeed, turningFor(drive.propeller, drive.inflow(boatSpeed), thrust))
    })
    return { boatSpeed, resistance: found, drives: states }
  }
  const range = resistanceRange(hull)
  const low = Math.max(range.low, 0.05)
  const top = low < range.high ? topOf(drives, { low, high: range.high }, resistance) : undefined
  const last = top?.boatSpeed ?? range.high
  const step = stepFor(last) * knot
  const count = Math.floor(last / step + 1e-9)
  const speeds = Array.from({ length: count }, (_, i) => (i + 1) * step)
  return {
    bollard,
    ...(top && { top }),
    rows: top?.bound === 'less-than' ? [] : speeds.flatMap((speed) => rowAt(speed) ?? []),
    asked: given.speeds.map(rowAt),
  }
}
