import { type Block, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { headOf } from '../../common/battery-string.ts'
import { type Outcome, ok } from '../../common/outcome.ts'
import { attempt, Missing, must } from './attempt.ts'
import { currentsAtLowest, energyOfFile, powerFrom } from './energy.ts'
import { bollardOf, powerOfFile } from './power.ts'

/** The most that the drives take from a battery continuously. */
interface Drawn {
  /** A, at the lowest voltage of the bank. */
  readonly current: number
  readonly volts: number
  /** `at bollard`. */
  readonly where: string
  /** Current to capacity, 1/h. */
  readonly rate: number
  readonly assumptions: readonly string[]
}

export const drawnFrom = plan(
  (battery: Block, lookup: Lookup): Outcome<Drawn> =>
    attempt(() => {
      const [power, energy] = [lookup.ofFile(powerOfFile), lookup.ofFile(energyOfFile)]
      if (!power.ok) return power
      if (!energy.ok) return energy
      const { table, drives, points } = power.value
      const id = idOf(headOf(battery, lookup))
      const bank = must(
        energy.value.banks.find(({ batteries }) => batteries.includes(id)),
        'what this battery feeds',
      )
      const still = drives.map((drive) => {
        const outcome = bollardOf(lookup.blockOf(drive), lookup.from(lookup.blockOf(drive)))
        return outcome.ok ? outcome.value.state : undefined
      })
      const cases = [
        { where: 'at bollard', power: powerFrom(bank, still, 'full') },
        { where: 'at top speed', power: powerFrom(bank, table.top?.drives ?? [], 'full') },
        ...table.asked.flatMap((row, i) => {
          const point = points[i]
          return row && point
            ? [
                {
                  where: `at ${lookup.blockOf(point).name ?? 'a point'}`,
                  power: powerFrom(bank, row.drives, 'full'),
                },
              ]
            : []
        }),
      ].toSorted((a, b) => b.power - a.power)
      const [worst] = cases
      if (!worst || worst.power <= 0)
        throw new Missing('neither a motor nor a point of the service is stated')
      const current = currentsAtLowest(bank, worst.power)[bank.batteries.indexOf(id)] ?? Number.NaN
      const capacity = must(factOf(battery, 'battery.capacity')?.value, 'the capacity of the battery')
      return ok({
        current,
        volts: bank.lowest,
        where: worst.where,
        rate: current / (capacity / 3600),
        assumptions: energy.value.assumptions,
      })
    }),
)
