import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { statedFact, Unreadable } from '../../common/stated-fact.ts'
import { batteriesAlong } from './dc-network.ts'

/** A battery that feeds a controller, with the lowest and the highest voltage that the job says of it, V. */
interface Supply {
  readonly battery: Block
  readonly low: number
  readonly high: number
}

/** What feeds a controller: the batteries that its cables come to, else the one that goes with it. Of a battery whose window is not said only the
 * nominal voltage is known. None where something of them could not be read. */
export function suppliesOf(controller: Block, lookup: Lookup): readonly Supply[] {
  try {
    const reached = batteriesAlong(controller, undefined, lookup).map(lookup.blockOf)
    // One at the margin that no cable leads to may be a part for other jobs.
    const near = reached.length === 0 && controller.parent ? lookup.near('battery') : undefined
    return (near ? [near] : reached).flatMap((battery) => {
      const nominal = statedFact(battery, 'battery.nominal')
      const window = statedFact(battery, 'battery.window')
      const volts = [window?.low, nominal, window?.high].filter((volt) => volt !== undefined)
      return volts.length === 0 ? [] : [{ battery, low: Math.min(...volts), high: Math.max(...volts) }]
    })
  } catch (error) {
    if (error instanceof Unreadable) return []
    throw error
  }
}
