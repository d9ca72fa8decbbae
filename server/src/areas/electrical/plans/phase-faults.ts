import { type MapFault, mapFaults } from '../../../engineering/electrical/phases.ts'
import { type Block, childrenOf, factOf, type Place, placeOfPart, type Value } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'

export interface PhaseFault extends Pick<MapFault, 'terminal'> {
  readonly type: 'missing' | 'doubled' | 'unknown'
  readonly side: 'from' | 'to'
  /** `controller terminal C`. */
  readonly words: string
  /** Terminals of that side, where the job lists them. */
  readonly terminals: readonly string[]
  /** The pair at fault, or all of them where something is missing. */
  readonly at: Place
}

type Terminals = Value<readonly { readonly name: string }[]>

/** Marks that a list of terminals has more than once, with where the second stands. */
export function twiceListed(terminals: Terminals): readonly { readonly name: string; readonly at: Place }[] {
  const names = terminals.value.map(({ name }) => name)
  return names.flatMap((name, index) =>
    names.indexOf(name) === index
      ? []
      : [{ name, at: terminals.origin ? terminals.at : placeOfPart(terminals, index) }],
  )
}

/** The marks of a list of terminals, each once. */
const marksOf = (terminals: Terminals | undefined): readonly string[] | undefined =>
  terminals && [...new Set(terminals.value.map(({ name }) => name))]

/** Faults of a phase map against the terminals of controller and motor. A side whose terminals are not listed is taken as the map has it. */
export function phaseFaults(map: Block, lookup: Lookup): readonly PhaseFault[] {
  const pairs = factOf(map, 'phase-map.pairs')
  // Of several in a drive only the first counts, which is told.
  const [first] = childrenOf(map.parent ?? map, 'phase-map')
  if (!pairs || (first && first !== map)) return []
  const controller = lookup.near('controller')
  const motor = lookup.near('motor')
  const from =
    marksOf(controller && factOf(controller, 'controller.terminals')) ?? pairs.value.map((pair) => pair.from)
  const to = marksOf(motor && factOf(motor, 'motor.terminals')) ?? pairs.value.map((pair) => pair.to)
  const faults = mapFaults(
    from,
    to,
    pairs.value.map((pair) => [pair.from, pair.to] as const),
  )
  return faults.map(({ fault, terminal, index }): PhaseFault => {
    const [type, side] = fault.split('-') as [PhaseFault['type'], PhaseFault['side']]
    // Places of inherited pairs lie in another text.
    const at = index !== undefined && !pairs.origin ? placeOfPart(pairs, index) : pairs.at
    return {
      type,
      side,
      terminal,
      words: `${side === 'from' ? 'controller' : 'motor'} terminal ${terminal}`,
      terminals: side === 'from' ? from : to,
      at,
    }
  })
}
