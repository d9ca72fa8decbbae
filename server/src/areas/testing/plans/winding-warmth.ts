import { windingTemperature } from '../../../engineering/temperature/winding-temperature.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { celsius } from '../../common/celsius.ts'
import { partOf, testsOn } from './test-log.ts'

const meanOf = (test: Block): number | undefined => {
  const values = factOf(test, 'test.resistances')?.value.map(({ value }) => value) ?? []
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return values.length > 0 && mean > 0 ? mean : undefined
}

/** Mean temperature of a winding by its resistance, °C, from the first test of its phases, whose temperature is stated. Undefined for that test itself. */
export const windingWarmth = plan((test: Block, lookup: Lookup) => {
  const motor = partOf(lookup)
  if (factOf(test, 'test.kind')?.value !== 'phase-resistance' || !motor) return undefined
  const [first] = testsOn(motor, 'phase-resistance', lookup)
  const from = first && lookup.blockOf(first.test)
  const at = from && factOf(from, 'test.temperature')?.value
  const [cold, hot] = [from && meanOf(from), meanOf(test)]
  if (!from || first.test === idOf(test) || at === undefined || cold === undefined || hot === undefined)
    return undefined
  // Resistances this far apart are no two of one winding.
  if (hot / cold > 2.5 || cold / hot > 2.5) return undefined
  return {
    from: from.name ?? 'the first test',
    at: celsius(at),
    celsius: windingTemperature({ cold, celsius: celsius(at), hot }),
  }
})
