import { type MapFault, mapFaults } from '../engineering/electrical/phases.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf, type Place } from '../job/model.ts'

export interface PhaseFault extends MapFault {
  /** `controller terminal C`. */
  readonly words: string
  /** Terminals of that side, where the job lists them. */
  readonly terminals: readonly string[]
  /** The pair at fault, or all of them where something is missing. */
  readonly at: Place
}

/** Faults of a phase map against the terminals of controller and motor. A side whose terminals are not listed is taken as the map has it. */
export function phaseFaults(map: Block, lookup: Lookup): readonly PhaseFault[] {
  const pairs = factOf(map, 'phase-map.pairs')
  if (!pairs) return []
  const controller = lookup.near('controller')
  const motor = lookup.near('motor')
  const from =
    (controller && factOf(controller, 'controller.terminals'))?.value.map(({ name }) => name) ??
    pairs.value.map((pair) => pair.from)
  const to =
    (motor && factOf(motor, 'motor.terminals'))?.value.map(({ name }) => name) ??
    pairs.value.map((pair) => pair.to)
  const faults = mapFaults(
    from,
    to,
    pairs.value.map((pair) => [pair.from, pair.to] as const),
  )
  return faults.map((fault) => {
    const pair = fault.index === undefined ? undefined : pairs.value[fault.index]
    const side = fault.fault.endsWith('-from') ? 'controller' : 'motor'
    // Places of inherited pairs lie in another text.
    const at = pair && !pairs.origin ? { section: pairs.at.section, span: pair.span } : pairs.at
    return {
      ...fault,
      words: `${side} terminal ${fault.terminal}`,
      terminals: side === 'controller' ? from : to,
      at,
    }
  })
}
