import { at, type Reported } from '../../checks/check.ts'
import { reaches } from '../../engineering/compare.ts'
import type { Value } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { peakLoad } from './plans/peak-load.ts'

/** What a gear or a coupling takes for a short time, against what its motor gives. Where only the rated torque is stated, it may take more. */
export function beyondPeak(
  peak: Value<number> | undefined,
  rated: Value<number> | undefined,
  { block, show }: Lookup,
): readonly Reported[] {
  const load = peakLoad(block)
  const most = peak ?? rated
  if (load === undefined || !most || reaches(most.value, load)) return []
  const [found, limit] = [show(load, 'torque'), show(most.value, 'torque')]
  return [
    at(most, {
      ...(!peak && { severity: 'warning' as const }),
      message: `It takes ${limit}, but the motor peaks at ${found} here.`,
      ...(!peak && { detail: 'That is what it takes continuously; its peak torque is not stated.' }),
      todo: `${peak ? '' : 'State the `peak-torque` of the maker. Or '}${peak ? 'Choose' : 'choose'} a ${block.kind} for this torque, or limit the peak current of the controller.`,
      found,
      limit: `at most ${limit}`,
    }),
  ]
}
