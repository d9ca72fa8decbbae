import type { Block } from '../../../job/model.ts'
import { greatest, least } from '../../../quantity/extremes.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { distinctStrings, stringOf } from '../../common/battery-string.ts'
import { readable, statedFact, Unreadable } from '../../common/stated-fact.ts'
import { sumOver } from '../../common/string-facts.ts'
import { batteriesReached } from './cable-feed.ts'
import { batteriesAlong } from './dc-sides.ts'

/** A string that feeds a controller, with the lowest and the highest voltage that the job says of it, V. */
interface Supply {
  /** Its first battery. */
  readonly battery: Block
  readonly low: number
  readonly high: number
}

const voltagesOf = (battery: Block): readonly number[] => {
  const { low, high } = statedFact(battery, 'battery.window') ?? {}
  return [low, statedFact(battery, 'battery.nominal'), high].filter((volts) => volts !== undefined)
}

/** The strings that some batteries are in, with their voltages; throws where one could not be read. */
const voltagesFrom = (batteries: readonly Block[], lookup: Lookup): readonly Supply[] =>
  distinctStrings(batteries, lookup).flatMap((battery) => {
    const string = stringOf(battery, lookup)
    const low = sumOver(string, (one) => least(voltagesOf(one)))
    const high = sumOver(string, (one) => greatest(voltagesOf(one)))
    return low === undefined || high === undefined ? [] : [{ battery, low, high }]
  })

/** What feeds a controller: the batteries that its cables come to, else the one that goes with it. Of a battery whose window is not said only the
 * nominal voltage is known. None where something of them could not be read. */
export function suppliesOf(controller: Block, lookup: Lookup): readonly Supply[] {
  try {
    const reached = batteriesAlong(controller, undefined, lookup).map(lookup.blockOf)
    // One at the margin that no cable leads to may be a part for other jobs.
    const near = reached.length === 0 && controller.parent ? lookup.near('battery') : undefined
    return voltagesFrom(near ? [near] : reached, lookup)
  } catch (error) {
    if (error instanceof Unreadable) return []
    throw error
  }
}

/** What is at the battery end of a cable, through busbars, fuses and switches. None where something of it could not be read. */
export const suppliesOfCable = (cable: Block, lookup: Lookup): readonly Supply[] =>
  readable(() => voltagesFrom(batteriesReached(cable, lookup), lookup)) ?? []
