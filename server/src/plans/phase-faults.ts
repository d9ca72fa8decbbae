import { type MapFault, mapFaults } from '../engineering/electrical/phases.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'

/** Faults of a phase map against the terminals of controller and motor. A side whose terminals are not known is held against
 * the map itself, so that a terminal used twice still shows. */
export function phaseFaults(map: Block, lookup: Lookup): readonly MapFault[] {
  const pairs = factOf(map, 'phase-map.pairs')?.value
  const controller = lookup.near('controller')
  const motor = lookup.near('motor')
  const from = controller && factOf(controller, 'controller.terminals')?.value
  const to = motor && factOf(motor, 'motor.terminals')?.value
  if (!pairs) return []
  return mapFaults(
    from?.map(({ name }) => name) ?? pairs.map((pair) => pair.from),
    to?.map(({ name }) => name) ?? pairs.map((pair) => pair.to),
    pairs.map((pair) => [pair.from, pair.to] as const),
  )
}
