import { dcPower } from '../../../engineering/electrical/current.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { assumedFigures } from '../../common/assumed-figures.ts'
import { ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { assuming, type Or } from './assuming.ts'
import { motorsOf } from './cable-feed.ts'
import { outcomeOf, unsaid } from './cable-outcome.ts'

/** What something takes from the DC network: a power whatever the voltage is, W, or at least a current, A. */
export interface Draw {
  readonly power: number
  readonly current: number
}

export const amperesOf = (draw: Draw | undefined, volts: number): number | undefined =>
  draw && Math.max(draw.power / volts, draw.current)

/** DC power for the rated power of a motor, W, through controllers of which any may carry it all: the one that loses most counts. Undefined where the
 * power of the motor is not stated. Throws Unreadable. */
export function motorInput(motor: Block, controllers: readonly Block[], or: Or): number | undefined {
  const shaftPower = statedFact(motor, 'motor.power')
  if (shaftPower === undefined) return undefined
  const efficiencyOf = (controller: Block | undefined): number =>
    or(
      statedFact(controller, 'controller.efficiency'),
      assumedFigures.controllerEfficiency,
      'efficiency of the controller',
    )
  const motorEfficiency = or(
    statedFact(motor, 'motor.efficiency'),
    assumedFigures.motorEfficiency,
    'efficiency of the motor',
  )
  const inverterEfficiency = least(controllers.map(efficiencyOf)) ?? efficiencyOf(undefined)
  return dcPower({ shaftPower, motorEfficiency, inverterEfficiency })
}

/** What a load takes, or a converter at full output; undefined where it does not say. Throws Unreadable. */
export function otherDraw(load: Block, or: Or): Draw | undefined {
  if (load.kind === 'load') {
    const power = statedFact(load, 'load.power')
    const current = statedFact(load, 'load.current')
    return power === undefined && current === undefined
      ? undefined
      : { power: power ?? 0, current: current ?? 0 }
  }
  const output = statedFact(load, 'converter.output')?.high
  const current = statedFact(load, 'converter.current')
  if (output === undefined || current === undefined) return undefined
  const efficiency = or(
    statedFact(load, 'converter.efficiency'),
    assumedFigures.converterEfficiency,
    'efficiency of the converter',
  )
  return { power: (output * current) / efficiency, current: 0 }
}

/** The motors that a controller drives; undefined where that cannot be told. */
const motorsBehind = plan((controller: Block, lookup: Lookup): readonly BlockId[] | undefined => {
  const motors = outcomeOf(() => motorsOf(controller, lookup))
  return motors.ok ? motors.value.map(idOf) : undefined
})

/** How many controllers drive each motor of the file. */
const controllersByMotor = ({ ofKind, from }: FileLookup): ReadonlyMap<BlockId, number> => {
  const counts = new Map<BlockId, number>()
  const inDrives = ofKind('drive').flatMap((drive) => childrenOf(drive, 'controller'))
  for (const controller of [...inDrives, ...ofKind('controller')])
    for (const motor of motorsBehind(controller, from(controller)) ?? [])
      counts.set(motor, (counts.get(motor) ?? 0) + 1)
  return counts
}

const partOfMotor = plan(
  (motor: Block, { ofFile }: Lookup): number => 1 / (ofFile(controllersByMotor).get(idOf(motor)) ?? 1),
)

/** What a controller, motor, load or converter takes at its rated power; several controllers of one motor share its power alike. Undefined where that
 * cannot be told. */
export const ratedDraw = plan((part: Block, lookup: Lookup): Draw | undefined => {
  const { or } = assuming()
  const outcome = outcomeOf(() => {
    if (part.kind === 'load' || part.kind === 'converter') return ok(otherDraw(part, or))
    const motors = part.kind === 'motor' ? [idOf(part)] : motorsBehind(part, lookup)
    const powers = (motors ?? []).map((id) => {
      const motor = lookup.blockOf(id)
      const watts = motorInput(motor, part === motor ? [] : [part], or)
      return watts === undefined ? undefined : watts * partOfMotor(motor, lookup)
    })
    const known = powers.flatMap((power) => power ?? [])
    return known.length === 0 || known.length < powers.length
      ? unsaid('the power of the motor')
      : ok({ power: known.reduce((sum, power) => sum + power, 0), current: 0 })
  })
  return outcome.ok ? outcome.value : undefined
})
