import type { FullAhead, PowerRow, PowerTable } from '../../../engineering/propulsion/power-table.ts'
import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { type Demand, energyOfFile } from './energy.ts'
import { powerOfFile } from './power.ts'

// What of the whole boat belongs to one block, so that only what changes there is shown anew.

const beyondPoints = failed({
  type: 'beyond',
  words:
    'The resistance of the hull is not known at this speed: its points, or the rule that estimates it, end before.',
})

/** At the speed of a point of the service: each drive by name, with its place in the table. */
interface AtPoint {
  readonly row: PowerRow
  readonly names: readonly string[]
  readonly assumptions: readonly string[]
}

export const atPoint = plan((point: Block, lookup: Lookup): Outcome<AtPoint> => {
  const power = lookup.ofFile(powerOfFile)
  if (!power.ok) return power
  const { points, table, drives, assumptions } = power.value
  const row = table.asked[points.indexOf(idOf(point))]
  return row
    ? ok({ row, names: drives.map((id) => lookup.blockOf(id).name ?? ''), assumptions })
    : beyondPoints
})

/** What the banks give at a point of the service. */
export const demandAtPoint = plan(
  (
    point: Block,
    lookup: Lookup,
  ): Outcome<{ readonly demand: Demand; readonly assumptions: readonly string[] }> => {
    const [power, energy] = [lookup.ofFile(powerOfFile), lookup.ofFile(energyOfFile)]
    if (!power.ok) return power
    if (!energy.ok) return energy
    const demand = energy.value.asked[power.value.points.indexOf(idOf(point))]
    return demand ? ok({ demand, assumptions: energy.value.assumptions }) : beyondPoints
  },
)

/** The highest speed of the boat. */
export const topOf = plan(
  (
    _hull: Block,
    lookup: Lookup,
  ): Outcome<{ readonly top: NonNullable<PowerTable['top']>; readonly assumptions: readonly string[] }> => {
    const power = lookup.ofFile(powerOfFile)
    if (!power.ok) return power
    const { table, assumptions, noTop } = power.value
    return table.top
      ? ok({ top: table.top, assumptions })
      : failed({ type: 'unsaid', words: noTop ?? 'The resistance of the hull has no range of speeds.' })
  },
)

/** A drive at the top speed of the boat, where that is known. */
export const driveAtTop = plan(
  (
    drive: Block,
    lookup: Lookup,
  ):
    | { readonly state: FullAhead; readonly boatSpeed: number; readonly assumptions: readonly string[] }
    | undefined => {
    const power = lookup.ofFile(powerOfFile)
    if (!power.ok || !power.value.table.top) return undefined
    const { table, drives, assumptions } = power.value
    const { drives: states, boatSpeed, bound } = table.top ?? { drives: [], boatSpeed: Number.NaN }
    const state = states[drives.indexOf(idOf(drive))]
    // Where the points end or begin, the boat is not at its top speed.
    return state && !bound && states.length === drives.length ? { state, boatSpeed, assumptions } : undefined
  },
)
