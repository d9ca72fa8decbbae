import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { batteriesReached } from './cable-feed.ts'
import { convertersFeeding } from './let-through.ts'

/** The battery at an end of the cable, else those its circuit comes to, else the one that goes with it. */
export function batteriesOf(cable: Block, lookup: Lookup): readonly Block[] {
  const reached = batteriesReached(cable, lookup)
  if (reached.length > 0 || convertersFeeding(cable, lookup).length > 0) return reached
  const near = lookup.near('battery')
  return near ? [near] : []
}
