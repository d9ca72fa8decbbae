import { at, check, commonPractice } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatShare } from '../../../../quantity/format-measures.ts'
import { unlessReplaced } from '../../history.ts'
import { balanceOf, phasesOf } from '../../plans/balance.ts'

export default check({
  id: 'test/unbalanced',
  severity: 'error',
  title: 'Phases that differ',
  why: 'A phase whose resistance or no-load current differs has a bad joint, a shorted turn or a wrong connection. The imbalance is the largest difference from the mean, as a share of it. Measured together, the phases have one temperature, so none is corrected.',
  source: commonPractice(
    'imbalance as NEMA MG 1 defines it (from memory); 5 % of resistance, 10 % of current where the job states no limit: common practice, no source',
  ),
  on: 'test',
  fires: `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 {
    kind: phase-resistance
    on: propulsion
    taken: 2026-03-12
    resistances: U-V 14.2 mohm, V-W 14.3 mohm, W-U 18.1 mohm
#                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ 16.5 %
    temperature: 18 degC
    permitted: max 5 %
  }
}`,
  quiet: `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 {
    kind: phase-resistance
    on: propulsion
    taken: 2026-03-12
    resistances: U-V 14.2 mohm, V-W 14.3 mohm, W-U 14.1 mohm
    temperature: 18 degC
    permitted: max 5 %
  }
}`,
  run: (_facts, lookup) => {
    const phases = phasesOf(lookup.block)
    const balance = balanceOf(lookup.block, lookup)
    if (!phases) return []
    if (!balance)
      return phases.value.length > 1
        ? unlessReplaced(lookup, [
            at(phases, {
              message: 'All phases measure zero.',
              todo: 'Measure again with an instrument that reads so small a value.',
            }),
          ])
        : []
    const { share, most, isStated, what } = balance
    if (reaches(most, share)) return []
    const [found, limit] = [formatShare(share), formatShare(most)]
    return unlessReplaced(lookup, [
      at(phases, {
        severity: isStated ? 'error' : 'warning',
        message: `The ${what}s of the phases differ by ${found} from their mean; ${limit} is ${isStated ? 'permitted' : 'usual'}.`,
        todo: 'Check joints, lugs and terminals, then measure again.',
        found,
        limit: `at most ${limit}`,
        ...(!isStated && { assumptions: [`the job states no limit, so ${limit} is assumed`] }),
      }),
    ])
  },
})
