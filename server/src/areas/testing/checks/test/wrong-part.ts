import { at, check, theLanguage } from '../../../../checks/check.ts'
import { listed } from '../../../common/listed.ts'
import { kindsOfTest } from '../../plans/kinds-of-test.ts'
import { partOf } from '../../plans/test-log.ts'

export default check({
  id: 'test/wrong-part',
  severity: 'error',
  title: 'Test on a part that it cannot be done on',
  why: 'The record proves nothing about the part that it names, and the part that was tested has no record.',
  source: theLanguage,
  on: 'test',
  needs: { kind: 'test.kind', on: 'test.on' },
  fires: `drive main {
  motor propulsion { terminals: U, V, W }
  cable phases { to: propulsion }
  test t1 { kind: phase-resistance  on: phases  taken: 2026-03-12 }
#                                       ^^^^^^ on a motor
}`,
  quiet: `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 { kind: phase-resistance  on: propulsion  taken: 2026-03-12 }
}`,
  run: ({ kind, on }, lookup) => {
    const part = partOf(lookup)
    const { on: kinds } = kindsOfTest[kind.value]
    if (!part || kinds.includes(part.kind)) return []
    return [
      at(on, {
        message: `A test of ${kind.value} is done on a ${listed(kinds, 'or')}, not on a ${part.kind}.`,
        todo: 'Name the part that was tested, or correct the kind of the test.',
        found: part.kind,
        limit: listed(kinds, 'or'),
      }),
    ]
  },
})
