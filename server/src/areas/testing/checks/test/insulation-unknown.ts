import { atHead, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { insulationOf } from '../../plans/insulation.ts'
import { replacedBy } from '../../plans/test-log.ts'

export default check({
  id: 'test/insulation-unknown',
  severity: 'warning',
  title: 'Insulation resistance that cannot be compared',
  why: 'Insulation resistance halves for about each 10 K. Without the temperature of the winding nobody knows whether it is enough.',
  source: published('IEEE 43-2013: compared at 40 °C'),
  on: 'test',
  fires: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
# ^^^^^^^ temperature
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    voltage: 500 V
    resistance: 20 Mohm
  }
}`,
  quiet: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    voltage: 500 V
    resistance: 20 Mohm
    temperature: 40 degC
  }
}`,
  run: (_facts, lookup) => {
    const { block } = lookup
    const insulation = insulationOf(block, lookup)
    if (!insulation || insulation.counted !== undefined || replacedBy(block, lookup) !== undefined) return []
    // What no correction brings up to the limit is too low.
    if (!reaches(insulation.measured * 16, insulation.least)) return []
    const found = formatSi(insulation.measured, 'resistance', 'metric', 3)
    return [
      atHead(block, {
        message: `The temperature of the winding is not stated, so its ${found} cannot be compared.`,
        detail: `At 40 °C at least ${formatSi(insulation.least, 'resistance')} is required.`,
        todo: 'State the temperature that the winding had, or measure again with it.',
        found,
      }),
    ]
  },
})
