import {
  indexMeaningless,
  indexMinimum,
  polarisationIndex,
} from '../../../engineering/insulation/polarisation-index.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { partOf } from './test-log.ts'

/** The polarisation index that a test of a winding found, and what is usual. Undefined where it was not measured, or the first resistance is zero. */
export const indexOf = plan((test: Block, lookup: Lookup) => {
  const motor = partOf(lookup)
  const early = factOf(test, 'test.resistance')?.value
  const late = factOf(test, 'test.resistance-10-min')?.value
  if (factOf(test, 'test.kind')?.value !== 'insulation-resistance' || motor?.kind !== 'motor')
    return undefined
  if (early === undefined || late === undefined || early < 1) return undefined
  return {
    index: polarisationIndex({ early, late }),
    least: indexMinimum(factOf(motor, 'motor.thermal-class')?.value),
    isMeaningless: early > indexMeaningless,
  }
})
