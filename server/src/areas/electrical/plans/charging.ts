import { type Block, factOf } from '../../../job/model.ts'
import { least } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { headOf, stringOf } from '../../common/battery-string.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import { topologyOfFile } from './dc-topology.ts'

/** What cables join to a battery, that charges it and is charged with it. */
interface Charging {
  /** Chargers, and converters whose output reaches it. */
  readonly feeders: readonly BlockId[]
  /** All they give together, A. */
  readonly current: number
  /** The strings side by side, by their first batteries. */
  readonly strings: readonly BlockId[]
}

const chargingInFile = ({ ofFile }: FileLookup): ReadonlyMap<BlockId, Charging> => {
  const islands = new Set(ofFile(topologyOfFile).islands.values())
  return new Map(
    [...islands].flatMap(({ batteries, feeders }) => {
      const strings = batteries.map(({ battery }) => battery)
      const charging: Charging = {
        feeders: feeders.map(({ feeder }) => feeder),
        current: feeders.reduce((sum, { current }) => sum + current, 0),
        strings,
      }
      return feeders.length === 0 ? [] : strings.map((battery) => [battery, charging] as const)
    }),
  )
}

/** What charges a battery, or the string that it is in; undefined where nothing does. */
export const chargingOf = plan((battery: Block, lookup: Lookup): Charging | undefined =>
  lookup.ofFile(chargingInFile).get(idOf(headOf(battery, lookup))),
)

/** The least charge current that the batteries of a string permit, A. */
function permittedBy(battery: Block, lookup: Lookup): number | undefined {
  try {
    return least(
      stringOf(battery, lookup.from(battery)).flatMap(
        (one) => factOf(one, 'battery.charge-current')?.value ?? [],
      ),
    )
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** What all strings side by side permit, A; undefined where one does not state it. */
export function permittedCharge({ strings }: Charging, lookup: Lookup): number | undefined {
  const each = strings.map((battery) => permittedBy(lookup.blockOf(battery), lookup))
  return each.reduce<number | undefined>(
    (sum, one) => (sum === undefined || one === undefined ? undefined : sum + one),
    0,
  )
}

/** Whether the finding about what charges some strings stands at this battery: the weakest of the first string. */
export function standsFor(battery: Block, { strings: [first] }: Charging, lookup: Lookup): boolean {
  if (idOf(headOf(battery, lookup)) !== first) return false
  const string = stringOf(battery, lookup)
  const weakest = permittedBy(battery, lookup)
  return string.find((one) => factOf(one, 'battery.charge-current')?.value === weakest) === battery
}

/** The highest voltage that a charger, or a converter at its output, gives, V. */
export const highestOutput = (feeder: Block): number | undefined =>
  (feeder.kind === 'charger' ? factOf(feeder, 'charger.output') : factOf(feeder, 'converter.output'))?.value
    .high
