import type { Block } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { statedFact } from '../../common/stated-fact.ts'

export type CableSystem = 'dc' | 'three-phase'

const endIds = plan((cable: Block, lookup: Lookup): readonly (BlockId | undefined)[] =>
  (['from', 'to'] as const).map((end) => {
    const block = statedFact(cable, `cable.${end}`) === undefined ? undefined : lookup.referred(end)
    return block && idOf(block)
  }),
)

/** The blocks a cable joins, in the order from, to. Throws Unreadable. */
export const endsOf = (cable: Block, lookup: Lookup): readonly (Block | undefined)[] =>
  endIds(cable, lookup).map((id) => id && lookup.blockOf(id))

/** Parts of which every cable carries DC, as far as nothing else is said. */
const carriesDc = ['protection', 'busbar', 'isolator', 'contactor', 'charger', 'converter', 'load']

/** What a cable carries: DC from a battery whatever else is said, then as it says, else by what it joins. Undefined when neither tells.
 * OutOfRange when what it says could not be read. */
export const systemOf = plan((cable: Block, lookup: Lookup): CableSystem | undefined => {
  const ends = endsOf(cable, lookup).map((end) => end?.kind)
  if (ends.includes('battery')) return 'dc'
  const system = statedFact(cable, 'cable.system')
  if (system) return system
  if (ends.some((end) => end !== undefined && carriesDc.includes(end))) return 'dc'
  return ends.includes('motor') ? 'three-phase' : undefined
})
