import type { BatteryString } from '../../../engineering/propulsion/discharge.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import { holds } from '../../../quantity/band.ts'
import { formatShare } from '../../../quantity/format-measures.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { distinctStrings, stringOf } from '../../common/battery-string.ts'
import { markedAssumed } from '../../common/marked-assumed.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { lowestOfString } from '../../common/string-facts.ts'
import { fedTogether } from '../../electrical/plans/fed-together.ts'
import { Missing, must } from './attempt.ts'

/** The batteries of a drive: the one that it names with what is linked to it, those that its cables lead to, or the only one there is. */
function batteriesOf(drive: Block, file: FileLookup): readonly Block[] {
  const lookup = file.from(drive)
  const named = lookup.referred('battery')
  const starts = named ? [named] : childrenOf(drive, 'controller')
  const fed = file.ofFile(fedTogether)
  const batteries = new Set(starts.flatMap((start) => fed.get(idOf(start))?.batteries ?? []))
  if (batteries.size > 0) return [...batteries].map(file.blockOf)
  if (named) return [named]
  const near = lookup.near('battery')
  return near ? [near] : []
}

/** Batteries that discharge together, and what they feed. */
export interface Bank {
  /** The first of each string. */
  readonly batteries: readonly BlockId[]
  readonly strings: readonly BatteryString[]
  /** The low end of the window, else the nominal voltage, V. */
  readonly lowest: number
  readonly assumptions: readonly string[]
}

/** How the assumption ends where nothing is known of a battery. */
export const asOfLead = ', as of lead: its `chemistry` is not stated'

const lead: ReadonlySet<string> = new Set(['agm', 'gel', 'flooded'])
/** Taken where the file is silent. Common practice, no source. */
const assumed = { usable: { lithium: 0.8, lead: 0.5 }, exponent: 1.2, hourRate: 20 * 3600 }

/** How much voltages of one bank differ at most. Common practice, no source. */
const alike = 0.05

/** What a drive runs on. Throws what is missing. */
export function bankOf(drive: Block, file: FileLookup): Bank {
  const batteries = distinctStrings(batteriesOf(drive, file), file.from(drive))
  const [first] = batteries
  const who = drive.name ?? 'the drive'
  if (!first) throw new Missing(`which battery feeds ${who} is not clear`)
  const members = batteries.map((battery) => stringOf(battery, file.from(battery)))
  const strings = members.map(inSeries)
  const voltages = strings.map(({ string }) => string.nominal)
  const [low, high] = [Math.min(...voltages), Math.max(...voltages)]
  if (high > low * (1 + alike))
    throw new Missing(`the batteries that feed ${who} differ in voltage: how they are joined is not clear`)
  const input = childrenOf(drive, 'controller').flatMap(
    (controller) => factOf(controller, 'controller.input')?.value ?? [],
  )
  if (input.some((band) => !holds(band, low)))
    throw new Missing(`the battery of ${who} does not fit its controller: how it is fed is not clear`)
  const lows = members.flatMap((string) => lowestOfString(string) ?? [])
  return {
    batteries: batteries.map(idOf),
    strings: strings.map(({ string }) => string),
    lowest: Math.min(low, ...lows),
    assumptions: [
      ...markedAssumed(members.flat()),
      ...new Set(strings.flatMap(({ assumptions }) => assumptions)),
    ],
  }
}

interface Taken {
  readonly string: BatteryString
  readonly assumptions: readonly string[]
}

/** Batteries in series: the weakest of them sets what they give, and their voltages add up. */
function inSeries(members: readonly Block[]): Taken {
  const all = members.map(ofBattery)
  const [first, ...others] = all.map(({ string }) => string)
  if (!first) throw new Missing('there is no battery')
  return {
    string: others.reduce(weaker, first),
    assumptions: all.flatMap(({ assumptions }) => assumptions),
  }
}

const weaker = (one: BatteryString, other: BatteryString): BatteryString => {
  const peukert = [one, other]
    .flatMap((string) => string.peukert ?? [])
    .toSorted((a, b) => b.exponent - a.exponent)[0]
  return {
    capacity: Math.min(one.capacity, other.capacity),
    nominal: one.nominal + other.nominal,
    usable: Math.min(one.usable, other.usable),
    ...(peukert && { peukert }),
  }
}

function ofBattery(battery: Block): Taken {
  const name = battery.name ?? 'the battery'
  const assumptions: string[] = []
  const chemistry = statedFact(battery, 'battery.chemistry')
  const usable = statedFact(battery, 'battery.usable')
  const exponent = statedFact(battery, 'battery.peukert-exponent')
  const hourRate = statedFact(battery, 'battery.hour-rate')
  // A bank of which nothing is known may be lead.
  const isLead =
    chemistry === undefined ? usable === undefined && exponent === undefined : lead.has(chemistry)
  const share = usable ?? (isLead ? assumed.usable.lead : assumed.usable.lithium)
  if (usable === undefined)
    assumptions.push(
      `${formatShare(share, 3)} of ${name} may be used${chemistry === undefined ? asOfLead : ''}`,
    )
  const isRated = isLead || exponent !== undefined
  if (isRated && exponent === undefined)
    assumptions.push(`Peukert exponent of ${name} is ${assumed.exponent}`)
  if (isRated && hourRate === undefined) assumptions.push(`the capacity of ${name} is stated for 20 h`)
  return {
    string: {
      capacity: must(statedFact(battery, 'battery.capacity'), `the capacity of ${name}`),
      nominal: must(statedFact(battery, 'battery.nominal'), `the nominal voltage of ${name}`),
      usable: share,
      ...(isRated && {
        peukert: { exponent: exponent ?? assumed.exponent, hourRate: hourRate ?? assumed.hourRate },
      }),
    },
    assumptions,
  }
}
