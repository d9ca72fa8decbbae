import type { Precharge } from '../../../engineering/electrical/precharge.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { statedFact, Unreadable } from '../../common/stated-fact.ts'
import { controllersBehindSwitch } from './behind-switch.ts'

const isBuiltIn = (controller: Block): boolean =>
  statedFact(controller, 'controller.built-in-precharge') === 'yes'

/** The switch that a precharge bridges. */
const switchOf = (precharge: Block, lookup: Lookup): Block | undefined =>
  lookup.from(precharge).referred('around')

/** The controllers that a precharge charges: those that its switch feeds. Where no cables show that, the one that the switch is bolted to; else those of
 * its drive; at the top of the file those of all drives that have no precharge of their own. One with a precharge built in is not among them. Throws
 * Unreadable. */
function chargedBy(precharge: Block, lookup: Lookup): readonly Block[] {
  const bridged = switchOf(precharge, lookup)
  const behind = bridged && lookup.ofFile(controllersBehindSwitch).get(idOf(bridged))
  if (behind && behind.length > 0)
    return behind.map(lookup.blockOf).filter((controller) => !isBuiltIn(controller))
  const bolted = (['to', 'from'] as const).flatMap((side) => {
    const part = bridged && lookup.from(bridged).referred(side)
    return part?.kind === 'controller' ? [part] : []
  })
  const drives = lookup.ofKind('drive').filter((drive) => childrenOf(drive, 'precharge').length === 0)
  const around = precharge.parent
    ? childrenOf(precharge.parent, 'controller')
    : [...lookup.ofKind('controller'), ...drives.flatMap((drive) => childrenOf(drive, 'controller'))]
  return (bolted.length > 0 ? bolted : around).filter((controller) => !isBuiltIn(controller))
}

/** Whether a precharge charges no controller. */
export function chargesNothing(precharge: Block, lookup: Lookup): boolean {
  try {
    return chargedBy(precharge, lookup).length === 0
  } catch (error) {
    if (error instanceof Unreadable) return false
    throw error
  }
}

/** What the switch of a precharge can close on, A, if the job states it. */
export function makesOf(precharge: Block, lookup: Lookup): number | undefined {
  const bridged = switchOf(precharge, lookup)
  return bridged?.kind === 'contactor' ? factOf(bridged, 'contactor.makes')?.value : undefined
}

/** What charges a controller before its switch closes, besides itself. Throws Unreadable. */
export function prechargesOf(controller: Block, lookup: Lookup): readonly Block[] {
  const beside = controller.parent ? childrenOf(controller.parent, 'precharge') : []
  return [...new Set([...beside, ...lookup.ofKind('precharge')])].filter((precharge) =>
    chargedBy(precharge, lookup.from(precharge)).some((one) => idOf(one) === idOf(controller)),
  )
}

/** Whether something charges a controller before its switch closes; undefined where what the job says of it cannot be read. */
export function isPrecharged(controller: Block, lookup: Lookup): boolean | undefined {
  try {
    return isBuiltIn(controller) || prechargesOf(controller, lookup).length > 0
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

export const unsaid = (words: string) => failed({ type: 'unsaid', words })

interface PrechargeCircuit extends Omit<Precharge, 'voltage'> {
  readonly controllers: readonly Block[]
}

/** What a precharge charges, and through what. Throws Unreadable. */
export function prechargeCircuit(precharge: Block, lookup: Lookup): Outcome<PrechargeCircuit> {
  const resistance = statedFact(precharge, 'precharge.resistance')
  if (resistance === undefined) return unsaid('The job does not state its resistance.')
  const controllers = chargedBy(precharge, lookup)
  if (controllers.length === 0) return unsaid('It charges no controller of this job.')
  const capacitances = controllers.flatMap((one) => statedFact(one, 'controller.capacitance') ?? [])
  if (capacitances.length < controllers.length)
    return unsaid('The job does not state the capacitance of what it charges.')
  const across = controllers.flatMap((one) => statedFact(one, 'controller.discharge-resistance') ?? [])
  return ok({
    controllers,
    resistance,
    capacitance: capacitances.reduce((sum, one) => sum + one, 0),
    across: across.length > 0 ? 1 / across.reduce((sum, one) => sum + 1 / one, 0) : undefined,
  })
}
