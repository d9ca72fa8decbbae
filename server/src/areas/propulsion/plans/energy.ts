import {
  type BatteryString,
  dischargeRate,
  endurance,
  stringCurrents,
} from '../../../engineering/propulsion/discharge.ts'
import type { DriveState, PowerRow } from '../../../engineering/propulsion/power-table.ts'
import { greatest, least } from '../../../quantity/extremes.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { attempt } from './attempt.ts'
import { type Bank, bankOf } from './bank.ts'
import { motorLosses } from './drive-input.ts'
import { type House, houseOf } from './house.ts'
import { serviceOf } from './hull-input.ts'
import { powerOfFile } from './power.ts'

/** A bank, with the drives that run on it. */
export interface Feeding extends Bank {
  /** Places of the drives in the table, with what of the power of the bank comes to the shaft of the motor. */
  readonly drives: readonly { readonly index: number; readonly efficiency: number }[]
  readonly house: House
}

/** What the banks give at one speed of the boat. SI. */
export interface Demand {
  readonly boatSpeed: number
  /** From all banks together, W. */
  readonly power: number
  /** Until the first bank is down to its reserve, s. */
  readonly endurance: number
  /** m */
  readonly range: number
  /** Current to capacity at the nominal voltage, 1/h: of the bank that is drawn on hardest. */
  readonly rate: number
}

export interface Energy {
  readonly banks: readonly Feeding[]
  readonly reserve: number
  readonly rows: readonly Demand[]
  /** In the order of `asked` in the table. */
  readonly asked: readonly (Demand | undefined)[]
  readonly assumptions: readonly string[]
}

/** What a bank gives for the drives on it and for its other loads, W: `full` with all of those on, `mean` by their duty. */
export const powerFrom = (
  { drives, house }: Feeding,
  states: readonly (Pick<DriveState, 'motorPower'> | undefined)[],
  loads: 'full' | 'mean',
): number =>
  drives.reduce(
    (sum, { index, efficiency }) => sum + (states[index]?.motorPower ?? 0) / efficiency,
    house[loads],
  )

/** Current of each string of a bank, A, at the lowest voltage of the bank, where it is greatest. */
export const currentsAtLowest = ({ strings, lowest }: Bank, power: number): readonly number[] =>
  stringCurrents(
    strings.map((string): BatteryString => ({ ...string, nominal: lowest })),
    power,
  )

function demandAt(banks: readonly Feeding[], reserve: number, { boatSpeed, drives }: PowerRow): Demand {
  const powers = banks.map((bank) => powerFrom(bank, drives, 'mean'))
  const times = banks.map((bank, i) => endurance(bank.strings, Math.max(powers[i] ?? 0, 1e-3), reserve))
  const lasts = least(times) ?? Number.NaN
  const rates = banks.map(({ strings }, i) => dischargeRate(strings, Math.max(powers[i] ?? 0, 1e-3)))
  return {
    boatSpeed,
    power: powers.reduce((a, b) => a + b, 0),
    endurance: lasts,
    range: lasts * boatSpeed,
    rate: greatest(rates) ?? Number.NaN,
  }
}

const assumedReserve = 0.2

/** What the banks of the boat give at each speed, and how long. */
export const energyOfFile = (file: FileLookup): Outcome<Energy> =>
  attempt(() => {
    const power = file.ofFile(powerOfFile)
    if (!power.ok) return power
    const { drives, table } = power.value
    const banks = new Map<BlockId, Feeding>()
    const assumptions: string[] = []
    for (const [index, id] of drives.entries()) {
      const drive = file.blockOf(id)
      const bank = bankOf(drive, file)
      const losses = motorLosses(drive)
      assumptions.push(...bank.assumptions, ...losses.assumptions)
      const [first] = bank.batteries.toSorted()
      if (first === undefined) continue
      const before = banks.get(first)
      const own = { index, efficiency: losses.efficiency }
      const house = before?.house ?? houseOf(bank.batteries, bank.strings[0]?.nominal ?? bank.lowest, file)
      assumptions.push(...house.assumptions)
      banks.set(first, { ...bank, house, drives: [...(before?.drives ?? []), own] })
    }
    const stated = statedFact(serviceOf(file), 'service.reserve')
    if (stated === undefined) assumptions.push('20 % of what is usable is kept: no `reserve` is stated')
    if ([...banks.values()].every(({ house }) => house.full === 0))
      assumptions.push('no other load on the banks than the drives')
    const reserve = stated ?? assumedReserve
    const all = [...banks.values()]
    return ok({
      banks: all,
      reserve,
      rows: table.rows.map((row) => demandAt(all, reserve, row)),
      asked: table.asked.map((row) => row && demandAt(all, reserve, row)),
      assumptions: [...new Set([...power.value.assumptions, ...assumptions])],
    })
  })
