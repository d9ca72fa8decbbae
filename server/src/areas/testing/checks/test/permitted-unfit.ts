import { at, check, theLanguage } from '../../../../checks/check.ts'
import { kinds } from '../../../../quantity/kinds.ts'
import { listed } from '../../../common/listed.ts'
import { kindsOfTest } from '../../plans/kinds-of-test.ts'

export default check({
  id: 'test/permitted-unfit',
  severity: 'error',
  title: 'Limit that does not fit the test',
  why: 'A limit of another quantity, or one that is open where it matters, judges nothing. The test then looks as if it had a limit.',
  source: theLanguage,
  on: 'test',
  needs: { kind: 'test.kind', permitted: 'test.permitted' },
  fires: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    resistance: 180 Mohm
    permitted: max 5 %
#              ^^^^^^^ min and a resistance
  }
}`,
  quiet: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-12
    resistance: 180 Mohm
    permitted: min 10 Mohm
  }
}`,
  run: ({ kind, permitted }) => {
    const fitting = kindsOfTest[kind.value].permitted
    if (
      fitting.some(
        ([quantity, end]) => permitted.value.quantity === quantity && permitted.value[end] !== undefined,
      )
    )
      return []
    const words = listed(
      fitting.map(([quantity, end]) => `${end === 'low' ? 'min' : 'max'} and ${kinds[quantity].words}`),
      'or',
    )
    return [
      at(permitted, {
        message:
          fitting.length === 0
            ? `A test of ${kind.value} has no limit of its own.`
            : `The limit of a test of ${kind.value} is ${words}.`,
        todo: fitting.length === 0 ? 'Delete it.' : 'Correct the limit, or the kind of the test.',
      }),
    ]
  },
})
