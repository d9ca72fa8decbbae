import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatNumber } from '../../../../quantity/format.ts'
import { unlessReplaced } from '../../history.ts'
import { indexOf } from '../../plans/polarisation.ts'

export default check({
  id: 'test/polarisation-index-low',
  severity: 'warning',
  title: 'Polarisation index too low',
  why: 'In dry, clean insulation the current of the tester goes on falling for minutes, so the resistance rises. In wet or dirty insulation it does not. In a random-wound winding the current may settle within a minute, so a low index alone does not condemn it.',
  source: published('IEEE 43: 2.0, for class A 1.5; no meaning above 5 GΩ'),
  on: 'test',
  needs: { late: 'test.resistance-10-min' },
  fires: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    voltage: 500 V
    resistance: 180 Mohm
    resistance-10-min: 200 Mohm
#                      ^^^^^^^^ 1.11
    temperature: 18 degC
  }
}`,
  quiet: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    voltage: 500 V
    resistance: 180 Mohm
    resistance-10-min: 450 Mohm
    temperature: 18 degC
  }
}`,
  run: ({ late }, lookup) => {
    const index = indexOf(lookup.block, lookup)
    if (!index || index.isMeaningless || reaches(index.index, index.least)) return []
    const found = formatNumber(index.index, 3)
    return unlessReplaced(lookup, [
      at(late, {
        message: `The polarisation index is ${found}; at least ${index.least} is usual.`,
        detail:
          index.index < 1
            ? 'The resistance falls while the voltage is on: the insulation is wet, dirty or damaged.'
            : 'The insulation may be wet or dirty.',
        todo: 'Find the cause, dry and clean the winding, and measure again.',
        found,
        limit: `at least ${index.least}`,
      }),
    ])
  },
})
