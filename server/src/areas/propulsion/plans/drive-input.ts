import { lineCurrent } from '../../../engineering/electrical/current.ts'
import type { MotorLimit } from '../../../engineering/propulsion/motor-limit.ts'
import type { DriveInput } from '../../../engineering/propulsion/power-table.ts'
import { openWater } from '../../../engineering/propulsion/propeller-series.ts'
import { torqueOf } from '../../../engineering/torsion.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import { formatSi } from '../../../quantity/format.ts'
import { formatShare } from '../../../quantity/format-measures.ts'
import { plan } from '../../../store/plan.ts'
import { assumedFigures } from '../../common/assumed-figures.ts'
import { markedAssumed } from '../../common/marked-assumed.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { attempt, Missing, must } from './attempt.ts'

/** Taken where the file is silent. Common practice, no source. */
const assumed = { gearEfficiency: 0.96, shaftEfficiency: 0.98, areaRatio: 0.5 }

/** No fact says how much bearings and seal take. */
export const shaftLosses = `bearings and seal of the shaft leave ${formatShare(assumed.shaftEfficiency)} of the power`

/** A drive as the kernel takes it; wake and thrust deduction are those of the hull. */
export interface DriveSaid {
  readonly drive: Omit<DriveInput, 'wake' | 'thrustDeduction'>
  readonly assumptions: readonly string[]
  /** Why nothing is known of the limits of the motor. */
  readonly noMotor?: string
}

const percent = (share: number): string => formatShare(share, 3)

/** What a drive says of its propeller, gear and motor, or what is missing. */
export const driveSaid = plan(
  (drive: Block): Outcome<DriveSaid> =>
    attempt(() => {
      const propeller = childrenOf(drive, 'propeller')[0]
      if (!propeller) throw new Missing(`the propeller of ${drive.name ?? 'the drive'} is not described`)
      const [gear, motors] = [childrenOf(drive, 'gear')[0], childrenOf(drive, 'motor')]
      const own = `of the propeller of ${drive.name ?? 'the drive'}`
      const assumptions = [...markedAssumed([propeller, gear, ...motors])]
      const or = (stated: number | undefined, value: number, what: string): number => {
        if (stated === undefined) assumptions.push(`${what} is ${percent(value)}`)
        return stated ?? value
      }
      const made = {
        diameter: must(statedFact(propeller, 'propeller.diameter'), `the diameter ${own}`),
        pitch: must(statedFact(propeller, 'propeller.pitch'), `the pitch ${own}`),
        blades: must(statedFact(propeller, 'propeller.blades'), `the number of blades ${own}`),
        areaRatio: or(
          statedFact(propeller, 'propeller.blade-area-ratio'),
          assumed.areaRatio,
          'blade area ratio',
        ),
      }
      // Refused here, so that it is said of which propeller.
      openWater({ ...made, pitchRatio: made.pitch / made.diameter })
      const ratio = gear ? must(statedFact(gear, 'gear.ratio'), 'the ratio of the gear') : 1
      const ofGear = gear
        ? or(statedFact(gear, 'gear.efficiency'), assumed.gearEfficiency, 'efficiency of the gear')
        : 1
      assumptions.push(shaftLosses)
      const limit = attempt(() => ok(motorLimit(drive, assumptions)))
      return ok({
        drive: {
          ...made,
          ratio,
          efficiency: ofGear * assumed.shaftEfficiency,
          ...(limit.ok && { motor: limit.value }),
        },
        assumptions,
        ...(!limit.ok && { noMotor: limit.fault.words }),
      })
    }),
)

/** The motor that turns a propeller, where the drive has one alone. */
export function motorOf(drive: Block): Block | undefined {
  const [motor, more] = childrenOf(drive, 'motor')
  return more ? undefined : motor
}

/** The limits of the motor of a drive, whatever turns there. */
export const motorLimitOf = plan(
  (drive: Block): Outcome<MotorLimit> => attempt(() => ok(motorLimit(drive, []))),
)

/** What the motor gives all the time, and the current of its controller lets it give. */
function motorLimit(drive: Block, assumptions: string[]): MotorLimit {
  const count = childrenOf(drive, 'motor').length
  if (count > 1)
    throw new Missing(
      `which of the ${count} motors turns the propeller of ${drive.name ?? 'the drive'} is not clear`,
    )
  const motor = must(motorOf(drive), `the motor of ${drive.name ?? 'the drive'}`)
  const power = must(statedFact(motor, 'motor.power'), 'the power of the motor')
  const ratedSpeed = must(statedFact(motor, 'motor.speed'), 'the rated speed of the motor')
  const curve = statedFact(motor, 'motor.torque-curve')
  const stated = statedFact(motor, 'motor.max-speed')
  const maxSpeed = stated ?? Math.max(ratedSpeed, curve?.at(-1)?.at ?? 0)
  if (stated === undefined)
    assumptions.push(
      `highest speed of the motor is ${formatSi(maxSpeed, 'rotational speed')}: \`max-speed\` is not stated`,
    )
  return {
    ratedTorque: torqueOf({ power, speed: ratedSpeed }),
    ratedSpeed,
    maxSpeed,
    ...(curve && { curve: curve.map(({ at, value }) => ({ at, value })) }),
    share: shareOfController(drive, motor, power, assumptions),
  }
}

/** The share of its rated torque that a motor gives at the continuous current of its controller. */
function shareOfController(drive: Block, motor: Block, power: number, assumptions: string[]): number {
  const [controller, more] = childrenOf(drive, 'controller')
  const lineVoltage = statedFact(motor, 'motor.voltage')
  const current = controller && !more ? statedFact(controller, 'controller.current') : undefined
  if (current === undefined || lineVoltage === undefined) return 1
  const rated = lineCurrent({
    shaftPower: power,
    lineVoltage,
    powerFactor: statedFact(motor, 'motor.power-factor') ?? assumedFigures.powerFactor,
    efficiency: statedFact(motor, 'motor.efficiency') ?? assumedFigures.motorEfficiency,
  })
  const share = Math.min(1, current / rated)
  if (share < 1)
    assumptions.push(
      `the controller gives ${formatSi(current, 'current')} of ${formatSi(rated, 'current', 'metric', 3)} that the motor needs for its rated torque: its torque goes with the current`,
    )
  return share
}

/** What turns power at the motor into power from the battery, with what was assumed. */
export function motorLosses(drive: Block): {
  readonly efficiency: number
  readonly assumptions: readonly string[]
} {
  const motor = motorOf(drive)
  const [controller] = childrenOf(drive, 'controller')
  const stated = statedFact(motor, 'motor.efficiency')
  const ofController = statedFact(controller, 'controller.efficiency')
  return {
    efficiency:
      (stated ?? assumedFigures.motorEfficiency) * (ofController ?? assumedFigures.controllerEfficiency),
    assumptions: [
      ...(stated === undefined
        ? [`efficiency of the motor is ${percent(assumedFigures.motorEfficiency)}`]
        : []),
      ...(ofController === undefined
        ? [`efficiency of the controller is ${percent(assumedFigures.controllerEfficiency)}`]
        : []),
      'motor, controller and gear are as efficient as at rated load; at part load they lose a larger share',
    ],
  }
}
