import { knownTorque } from '../../../engineering/propulsion/motor-limit.ts'
import type { DriveState, PowerRow } from '../../../engineering/propulsion/power-table.ts'
import { childrenOf } from '../../../job/model.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { attempt } from './attempt.ts'
import { neededArea } from './blade-area.ts'
import { driveSaid } from './drive-input.ts'
import { type Demand, energyOfFile } from './energy.ts'
import { powerOfFile } from './power.ts'

/** A drive at one speed of the boat. SI. */
export interface DriveOnCurve {
  readonly drive: string
  readonly state: DriveState
  /** What the motor gives continuously at this speed of it; absent where that is not known. */
  readonly motorLimit?: number
  /** The same with the current of its controller, where that is stated. */
  readonly limit?: number
  /** The least blade area against cavitation, where the depth is stated. */
  readonly areaNeeded?: number
}

export interface PointOnCurve {
  readonly boatSpeed: number
  /** The point of the service; absent in the steps of the table. */
  readonly point?: string
  /** With the margin. */
  readonly resistance: number
  /** Resistance times speed. */
  readonly effectivePower: number
  readonly drives: readonly DriveOnCurve[]
  /** Absent where it is not known what feeds the drives. */
  readonly demand?: Demand
}

/** What no table needs but a curve shows: asked for by who prints or draws it, never by a check. */
function driveOnCurve(id: BlockId, state: DriveState, screws: number, file: FileLookup): DriveOnCurve {
  const drive = file.blockOf(id)
  const said = driveSaid(drive, file.from(drive))
  const motor = said.ok ? said.value.drive.motor : undefined
  const motorLimit = motor && knownTorque({ ...motor, share: 1 }, state.motorSpeed)
  const limit = motor && knownTorque(motor, state.motorSpeed)
  const [propeller] = childrenOf(drive, 'propeller')
  const area = propeller && attempt(() => ok(neededArea(propeller, { thrust: state.thrust, screws }, file)))
  return {
    drive: drive.name ?? '',
    state,
    ...(motorLimit !== undefined && { motorLimit }),
    ...(limit !== undefined && { limit }),
    ...(area?.ok && { areaNeeded: area.value }),
  }
}

/** The power curve of the boat, by speed: the steps of the table and the points of the service. */
export function powerCurveOfFile(file: FileLookup): Outcome<readonly PointOnCurve[]> {
  const [power, energy] = [file.ofFile(powerOfFile), file.ofFile(energyOfFile)]
  if (!power.ok) return power
  const { table, drives, points } = power.value
  const known = energy.ok ? energy.value : undefined
  const at = (row: PowerRow, demand: Demand | undefined, point?: string): PointOnCurve => ({
    boatSpeed: row.boatSpeed,
    ...(point !== undefined && { point }),
    resistance: row.resistance,
    effectivePower: row.resistance * row.boatSpeed,
    drives: row.drives.flatMap((state, i) => {
      const id = drives[i]
      return id ? [driveOnCurve(id, state, drives.length, file)] : []
    }),
    ...(demand && { demand }),
  })
  const steps = table.rows.map((row, i) => at(row, known?.rows[i]))
  const asked = table.asked.flatMap((row, i) => {
    const point = points[i]
    return row && point ? [at(row, known?.asked[i], file.blockOf(point).name ?? '')] : []
  })
  return ok([...steps, ...asked].toSorted((a, b) => a.boatSpeed - b.boatSpeed))
}
