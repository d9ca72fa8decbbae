import { fileCheck, theLanguage } from '../../../../checks/check.ts'
import { childrenOf, factOf, ofKind } from '../../../../job/model.ts'

const job = (taken: string) => `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 {
    kind: rotation
    on: propulsion
    taken: ${taken}
  }
}`

export default fileCheck({
  id: 'test/dated-in-future',
  severity: 'error',
  title: 'Test dated after today',
  why: 'Nothing can have been tested after today. With a wrong date the wrong record may count as the last.',
  source: theLanguage,
  fires: job('9999-03-04').replace('  }\n}', '#          ^^^^^^^^^^ after today\n  }\n}'),
  quiet: job('2020-03-04'),
  file: ({ blocks, today }) => {
    const tests = [
      ...ofKind(blocks, 'test'),
      ...ofKind(blocks, 'drive').flatMap((drive) => childrenOf(drive, 'test')),
    ]
    return tests.flatMap((test) => {
      const taken = factOf(test, 'test.taken')
      const day = taken?.value.slice(0, 10) ?? ''
      if (!taken || day <= today) return []
      return [
        {
          at: taken.at,
          message: `The test is dated ${day}, which is after today.`,
          todo: 'Correct the date. If it is right, check the date of this computer.',
          found: day,
          limit: `at most ${today}`,
        },
      ]
    })
  },
})
