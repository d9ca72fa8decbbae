import { faultCurrent } from '../../../engineering/electrical/fault-current.ts'
import type { Block } from '../../../job/model.ts'
import { formatSi } from '../../../quantity/format.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { distinctStrings, nameOfString, stringOf } from '../../common/battery-string.ts'
import { statedFact, Unreadable } from '../../common/stated-fact.ts'
import {
  chargedAsUsual,
  highestOfString,
  isHighStated,
  onCharge,
  sumOver,
} from '../../common/string-facts.ts'
import { batteriesOf } from './cable-batteries.ts'
import { batteriesJoined } from './let-through.ts'

/** What a short circuit at the batteries of a cable draws, A, and where each figure of it comes from. Where a battery says two figures, both
 * count: the higher one for what must interrupt it, the lower one for what it must open. */
export interface BankFault {
  /** At least this, where some batteries are not counted. */
  readonly highest: number
  /** Undefined where a battery beside the cable is not counted. */
  readonly lowest: number | undefined
  /** Those that say neither their short-circuit current nor their internal resistance. */
  readonly notCounted: readonly string[]
  readonly from: readonly string[]
  readonly assumptions: readonly string[]
}

/** The same of one battery, or of some in series. */
interface BatteryFault {
  readonly highest: number
  readonly lowest: number
  readonly from: string
  readonly assumptions: readonly string[]
}

/** The short-circuit current of the batteries of a cable, at their terminals: strings and banks side by side add up, and so do those that cables link
 * to them, whose resistance is not counted. Undefined where it cannot be told of any of them. */
export function bankShortCircuitCurrent(cable: Block, lookup: Lookup): BankFault | undefined {
  try {
    const near = batteriesOf(cable, lookup)
    const joined = batteriesJoined(cable, lookup).map(lookup.blockOf)
    const all = distinctStrings([...near, ...joined], lookup).map((battery) => stringOf(battery, lookup))
    const faults = all.map(ofString)
    const known = faults.flatMap((fault) => fault ?? [])
    if (near.length === 0 || known.length === 0) return undefined
    return {
      highest: known.reduce((sum, { highest }) => sum + highest, 0),
      // A link to another bank may be open.
      lowest: faults
        .slice(0, near.length)
        .reduce<number | undefined>(
          (sum, fault) => (sum === undefined || !fault ? undefined : sum + fault.lowest),
          0,
        ),
      notCounted: all.flatMap((string, i) => (faults[i] ? [] : nameOfString(string))),
      from: known.map(({ from }) => from),
      assumptions: known.flatMap(({ assumptions }) => assumptions),
    }
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** The highest short-circuit current of the string that a battery is in, A; undefined where it cannot be told. */
export const bankCurrent = (battery: Block, lookup: Lookup): number | undefined =>
  bankShortCircuit(battery, lookup)?.highest

/** The short-circuit current of the string that a battery is in, at its terminals; undefined where it cannot be told. */
export function bankShortCircuit(battery: Block, lookup: Lookup): BatteryFault | undefined {
  try {
    return ofString(stringOf(battery, lookup))
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** Figures of one short circuit, as different makers take them: cold or warm, new or old, charged or not. Further apart they contradict each
 * other. Common practice, no source. */
const asMeasured = 2

/** The two short-circuit currents that a battery says, A, where they contradict each other. */
export function contradictoryFault(
  battery: Block,
): { readonly stated: number; readonly calculated: number; readonly from: string } | undefined {
  try {
    const stated = statedFact(battery, 'battery.short-circuit-current')
    const other = calculated(battery)
    if (stated === undefined || !other) return undefined
    return Math.max(stated, other.current) > asMeasured * Math.min(stated, other.current)
      ? { stated, calculated: other.current, from: other.from }
      : undefined
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** Batteries in series: the sum of their voltages over the sum of their resistances. */
function ofString(string: readonly Block[]): BatteryFault | undefined {
  const [battery, ...others] = string
  if (!battery || others.length === 0) return battery && ofBattery(battery)
  const voltage = highestOfString(string)
  const least = sumOver(string, (one) => resistancesOf(one)?.[0])
  const most = sumOver(string, (one) => resistancesOf(one)?.[1])
  if (voltage === undefined || least === undefined || most === undefined) return undefined
  const isStated = isHighStated(string)
  return {
    highest: faultCurrent({ voltage, internalResistance: least }),
    lowest: faultCurrent({ voltage, internalResistance: most }),
    from: `${formatSi(voltage, 'voltage')} over the internal resistance of ${nameOfString(string)} in series, ${formatSi(least, 'resistance', 'metric', 3)}`,
    assumptions: isStated ? [] : [chargedAsUsual],
  }
}

/** The least and the most that a battery in a string has as internal resistance, Ω. Its short-circuit current is that of its own voltage. */
function resistancesOf(battery: Block): readonly [number, number] | undefined {
  const resistance = statedFact(battery, 'battery.internal-resistance')
  const current = statedFact(battery, 'battery.short-circuit-current')
  const voltage = highestOfString([battery])
  const all = [
    ...(resistance === undefined ? [] : [resistance]),
    ...(current === undefined || voltage === undefined ? [] : [voltage / current]),
  ]
  return all.length === 0 ? undefined : [Math.min(...all), Math.max(...all)]
}

function ofBattery(battery: Block): BatteryFault | undefined {
  const stated = statedFact(battery, 'battery.short-circuit-current')
  const asStated = `as ${battery.name} states it`
  const other = calculated(battery)
  if (stated === undefined) return other && { ...other, highest: other.current, lowest: other.current }
  if (!other) return { highest: stated, lowest: stated, from: asStated, assumptions: [] }
  return {
    highest: Math.max(stated, other.current),
    lowest: Math.min(stated, other.current),
    from: other.current > stated ? other.from : asStated,
    assumptions: other.assumptions,
  }
}

/** From the internal resistance. */
function calculated(
  battery: Block,
): { readonly current: number; readonly from: string; readonly assumptions: readonly string[] } | undefined {
  const internalResistance = statedFact(battery, 'battery.internal-resistance')
  const nominal = statedFact(battery, 'battery.nominal')
  const high = statedFact(battery, 'battery.window')?.high
  const charged = high ?? (nominal === undefined ? undefined : onCharge * nominal)
  // A window below the nominal voltage is wrong in one of the two: the higher one counts.
  const voltage = charged === undefined ? undefined : Math.max(charged, nominal ?? 0)
  if (internalResistance === undefined || voltage === undefined) return undefined
  const volts = formatSi(voltage, 'voltage')
  const over = `the internal resistance of ${battery.name}, ${formatSi(internalResistance, 'resistance', 'metric', 3)}`
  const assumed =
    high === undefined ? `, ${onCharge} times its nominal voltage as its window is not stated` : ''
  return {
    current: faultCurrent({ voltage, internalResistance }),
    from: `${volts}${assumed} over ${over}`,
    assumptions: high === undefined ? [chargedAsUsual] : [],
  }
}
