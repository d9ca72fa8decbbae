import { at, check, published } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { formatSi } from '../../../../quantity/format.ts'
import { unlessReplaced } from '../../history.ts'
import { insulationOf } from '../../plans/insulation.ts'

/** More than any correction to 40 °C makes of a resistance: even a winding tested hot is then too low. */
const mostCorrected = 16

export default check({
  id: 'test/insulation-low',
  severity: 'error',
  title: 'Insulation resistance too low',
  why: 'A wet, dirty or damaged winding breaks down under voltage. Dry and clean it, and measure again before power comes on. A resistance is compared at 40 °C: that of a warm winding is lower, so a cold one must show more.',
  source: published(
    'IEEE 43-2013: 5 MΩ at 40 °C for random-wound windings and below 1 kV, 100 MΩ for formed ones above. Cables: IEC 60364-6, batteries: UN ECE R100, both from memory',
  ),
  on: 'test',
  needs: { resistance: 'test.resistance' },
  fires: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    voltage: 500 V
    resistance: 12 Mohm
#               ^^^^^^^ 3 Mohm at 40 degC
    temperature: 20 degC
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
    temperature: 20 degC
  }
}`,
  run: ({ resistance }, lookup) => {
    const insulation = insulationOf(lookup.block, lookup)
    if (!insulation) return []
    const { measured, counted, how, least, limitFrom, assumptions } = insulation
    if (reaches(counted ?? measured * mostCorrected, least)) return []
    const found = formatSi(counted ?? measured, 'resistance', 'metric', 3)
    const limit = formatSi(least, 'resistance', 'metric', 3)
    return unlessReplaced(lookup, [
      at(resistance, {
        message: `The insulation resistance is ${found}${how === undefined ? '' : ' at 40 degC'}; at least ${limit} is required.`,
        detail: `Limit: ${limitFrom}.${how === undefined ? '' : ` Result: ${how}.`}`,
        todo: 'Find the cause, dry and clean the part, and measure again before power comes on.',
        found,
        limit: `at least ${limit}`,
        ...(assumptions.length > 0 && { assumptions }),
      }),
    ])
  },
})
