import { faultCurrent } from '../engineering/electrical/fault-current.ts'
import type { Lookup } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'
import { formatSi } from '../quantity/format.ts'
import { onCharge } from './cable-protection.ts'
import { batteriesOf } from './design-current.ts'
import { said, Unreadable } from './said.ts'

/** What a short circuit at the batteries of a cable draws, A, and where each figure of it comes from. */
interface BankFault {
  readonly current: number
  readonly from: readonly string[]
}

/** The short-circuit current of the batteries of a cable, at their terminals: strings and banks side by side add up. Undefined where one of them
 * says neither its short-circuit current nor its internal resistance: then it cannot be told. */
export function bankFault(cable: Block, lookup: Lookup): BankFault | undefined {
  try {
    const banks = batteriesOf(cable, lookup).map(ofBattery)
    if (banks.length === 0 || banks.some((bank) => bank === undefined)) return undefined
    const known = banks.flatMap((bank) => bank ?? [])
    return {
      current: known.reduce((sum, { current }) => sum + current, 0),
      from: known.map(({ from }) => from),
    }
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

function ofBattery(battery: Block): { readonly current: number; readonly from: string } | undefined {
  const stated = said(battery, 'battery.short-circuit-current')
  if (stated !== undefined) return { current: stated, from: `as ${battery.name} states it` }
  const internalResistance = said(battery, 'battery.internal-resistance')
  const nominal = said(battery, 'battery.nominal')
  const high = said(battery, 'battery.window')?.high
  const voltage = high ?? (nominal === undefined ? undefined : onCharge * nominal)
  if (internalResistance === undefined || voltage === undefined) return undefined
  const volts = formatSi(voltage, 'voltage')
  const over = `the internal resistance of ${battery.name}, ${formatSi(internalResistance, 'resistance', 'metric', 3)}`
  const assumed =
    high === undefined ? `, ${onCharge} times its nominal voltage as its window is not said` : ''
  return {
    current: faultCurrent({ voltage, internalResistance }),
    from: `${volts}${assumed} over ${over}`,
  }
}
