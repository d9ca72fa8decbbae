import { threePhaseInput } from '../../../engineering/electrical/current.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { assumedFigures } from '../../common/assumed-figures.ts'
import { markedAssumed } from '../../common/marked-assumed.ts'
import { assuming } from './assuming.ts'

/** What a controller has to give for the rated power of its motor. */
interface MotorCurrent {
  /** In the line, A. */
  readonly current: number
  readonly assumptions: readonly string[]
}

/** How much of the current that its motor needs a controller gives at least. Common practice, no source. */
export const leastShare = 0.9

/** Undefined where the motor does not say enough, and where it has several controllers: each gives a part. */
export const motorCurrent = plan((controller: Block, lookup: Lookup): MotorCurrent | undefined => {
  const motor = lookup.near('motor')
  const power = motor && factOf(motor, 'motor.power')?.value
  const lineVoltage = motor && factOf(motor, 'motor.voltage')?.value
  const isOnly = !controller.parent || childrenOf(controller.parent, 'controller').length === 1
  if (!motor || power === undefined || lineVoltage === undefined || !isOnly) return undefined
  if (motor.unread.has('power-factor') || motor.unread.has('efficiency')) return undefined
  const { assumptions, assume, or } = assuming()
  markedAssumed([motor]).forEach(assume)
  const powerFactor = or(
    factOf(motor, 'motor.power-factor')?.value,
    assumedFigures.powerFactor,
    'power factor of the motor',
  )
  const efficiency = or(
    factOf(motor, 'motor.efficiency')?.value,
    assumedFigures.motorEfficiency,
    'efficiency of the motor',
  )
  // From what one ampere brings in, so that no figure is too absurd to be compared.
  const perAmpere = threePhaseInput({ lineVoltage, current: 1, powerFactor })
  return { current: power / (perAmpere * efficiency), assumptions }
})
