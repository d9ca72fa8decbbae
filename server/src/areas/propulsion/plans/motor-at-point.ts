import { knownTorque, motorSpeeds } from '../../../engineering/propulsion/motor-limit.ts'
import type { Block } from '../../../job/model.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { atPoint } from './at-block.ts'
import { attempt } from './attempt.ts'
import { driveSaid, motorOf } from './drive-input.ts'
import { powerOfFile } from './power.ts'

/** What a motor must do at a point of the service, and can do. SI, at its shaft. */
export interface MotorAtPoint {
  readonly drive: BlockId
  readonly name: string
  readonly speed: number
  readonly torque: number
  /** Absent where nothing is known of its limits. */
  readonly maxSpeed?: number
  /** Absent too where it must turn faster than it can, or its curve does not say. */
  readonly maxTorque?: number
  /** Where its curve ends below this speed, though it may turn as fast: the last speed of the curve. */
  readonly curveEnd?: number
  /** For a while only. */
  readonly peak?: { readonly torque: number; readonly time: number }
}

interface MotorsAtPoint {
  readonly motors: readonly MotorAtPoint[]
  readonly assumptions: readonly string[]
}

export const motorAtPoint = plan(
  (point: Block, lookup: Lookup): Outcome<MotorsAtPoint> =>
    attempt(() => {
      const [here, power] = [atPoint(point, lookup), lookup.ofFile(powerOfFile)]
      if (!here.ok) return here
      if (!power.ok) return power
      const { row, names, assumptions } = here.value
      const motors = power.value.drives.flatMap((id, i): readonly MotorAtPoint[] => {
        const state = row.drives[i]
        if (!state) return []
        const drive = lookup.blockOf(id)
        const said = driveSaid(drive, lookup.from(drive))
        const limit = said.ok ? said.value.drive.motor : undefined
        const { motorSpeed: speed, motorTorque: torque } = state
        const motor = motorOf(drive)
        const maxTorque = limit && speed <= limit.maxSpeed ? knownTorque(limit, speed) : undefined
        const isPast = limit && speed <= limit.maxSpeed && speed > motorSpeeds(limit).high * (1 + 1e-9)
        const peak = {
          torque: statedFact(motor, 'motor.peak-torque'),
          time: statedFact(motor, 'motor.peak-time'),
        }
        return [
          {
            drive: id,
            name: names[i] ?? '',
            speed,
            torque,
            ...(limit && { maxSpeed: limit.maxSpeed }),
            ...(maxTorque !== undefined && { maxTorque }),
            ...(isPast && { curveEnd: motorSpeeds(limit).high }),
            ...(peak.torque !== undefined &&
              peak.time !== undefined && { peak: { torque: peak.torque, time: peak.time } }),
          },
        ]
      })
      return ok({ motors, assumptions })
    }),
)
