import { dcPower } from '../../../engineering/electrical/current.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import { greatest, least } from '../../../quantity/extremes.ts'
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
  /** At most so much, A. */
  readonly most?: number
  /** How long, s, where it ends and that is known. */
  readonly lasts?: number
}

/** A, at so many volts. */
export const amperesOf = (
  { power, current, most = Number.POSITIVE_INFINITY }: Draw,
  volts: number,
): number => (power === 0 ? current : Math.min(Math.max(power / volts, current), most))

/** DC power for the rated or another power of a motor, W, through controllers of which any may carry it all: the one that loses most counts. Undefined where the
 * power of the motor is not stated. Throws Unreadable. */
export function motorInput(
  motor: Block,
  controllers: readonly Block[],
  or: Or,
  shaftPower = statedFact(motor, 'motor.power'),
): number | undefined {
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

/** What a part that drives motors takes, W, by the power of each; several controllers of one motor share it alike. Undefined where that of one is not
 * known. Throws Unreadable. */
function motorsInput(
  part: Block,
  powerOf: (motor: Block) => number | undefined,
  lookup: Lookup,
): number | undefined {
  const { or } = assuming()
  const motors = part.kind === 'motor' ? [idOf(part)] : (motorsBehind(part, lookup) ?? [])
  const powers = motors.map((id) => {
    const motor = lookup.blockOf(id)
    const watts = motorInput(motor, part === motor ? [] : [part], or, powerOf(motor))
    return watts === undefined ? undefined : watts * partOfMotor(motor, lookup)
  })
  const known = powers.flatMap((power) => power ?? [])
  return known.length === 0 || known.length < powers.length
    ? undefined
    : known.reduce((sum, power) => sum + power, 0)
}

const isOther = ({ kind }: Block): boolean => kind === 'load' || kind === 'converter'

/** What a controller, motor, load or converter takes at its rated power; several controllers of one motor share its power alike. Undefined where that
 * cannot be told. */
export const ratedDraw = plan((part: Block, lookup: Lookup): Draw | undefined => {
  const outcome = outcomeOf(() => {
    if (isOther(part)) return ok(otherDraw(part, assuming().or))
    const power = motorsInput(part, (motor) => statedFact(motor, 'motor.power'), lookup)
    return power === undefined ? unsaid('the power of the motor') : ok({ power, current: 0 })
  })
  return outcome.ok ? outcome.value : undefined
})

/** The power of a motor at peak torque and rated speed, W; where it states no peak torque, its rated power. */
function peakPower(motor: Block): number | undefined {
  const rated = statedFact(motor, 'motor.power')
  const [torque, speed] = [statedFact(motor, 'motor.peak-torque'), statedFact(motor, 'motor.speed')]
  return torque === undefined || speed === undefined ? rated : Math.max(torque * speed, rated ?? 0)
}

/** What a controller or motor takes at the peak torque of its motors; a limit of its input current caps it. Undefined where none of them states a peak
 * torque, or a figure for it is missing. */
export const peakDraw = plan((part: Block, lookup: Lookup): Draw | undefined => {
  const outcome = outcomeOf(() => {
    if (isOther(part)) return unsaid('a peak')
    const motors = part.kind === 'motor' ? [part] : (motorsBehind(part, lookup) ?? []).map(lookup.blockOf)
    const peaking = motors.filter((motor) => statedFact(motor, 'motor.peak-torque') !== undefined)
    const power = motorsInput(part, peakPower, lookup)
    if (peaking.length === 0 || power === undefined) return unsaid('the peak torque of the motor')
    const times = peaking.map((motor) => statedFact(motor, 'motor.peak-time'))
    const ofMotors = times.includes(undefined) ? undefined : greatest(times.flatMap((time) => time ?? []))
    const ofController = part.kind === 'controller' ? statedFact(part, 'controller.peak-time') : undefined
    const most = part.kind === 'controller' ? statedFact(part, 'controller.input-current-limit') : undefined
    const lasts = least([ofMotors, ofController].flatMap((time) => time ?? []))
    return ok({
      power,
      current: 0,
      ...(most !== undefined && { most }),
      ...(lasts !== undefined && { lasts }),
    })
  })
  return outcome.ok ? outcome.value : undefined
})
