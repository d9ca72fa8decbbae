import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { isLater } from '../../common/days.ts'
import { kindsOfTest } from './kinds-of-test.ts'
import { partOf, testsOn } from './test-log.ts'

/** Whether a test under power was done before the insulation of its motor was proved. Undefined where it needs no power, or has no motor. */
export const isPoweredFirst = plan((test: Block, lookup: Lookup): boolean | undefined => {
  const kind = factOf(test, 'test.kind')?.value
  const taken = factOf(test, 'test.taken')?.value
  const part = partOf(lookup)
  if (!kind || !kindsOfTest[kind].isPowered || taken === undefined || !part) return undefined
  const motor = part.kind === 'motor' ? part : lookup.from(part).near('motor')
  if (!motor) return undefined
  return !testsOn(motor, 'insulation-resistance', lookup).some(
    (proof) => proof.taken !== undefined && !isLater(proof.taken, taken),
  )
})
