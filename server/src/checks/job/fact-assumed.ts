import { isAssumed } from '../../job/model.ts'
import { at, check, theLanguage } from '../check.ts'
import { assumedFacts, severityOfMissing } from '../missing.ts'

const job = (origin: string, mark = '') => `job "Launch" {
  vessel: "Launch 07"
  status: as-built
}
drive main {
  seal {
    free-length: 148 mm [measured]
    fitted-length: 121 mm [${origin}]
${mark}  }
}`

export default check({
  id: 'job/fact-assumed',
  severity: 'error',
  followsStatus: true,
  title: 'As-built with an assumed fact',
  why: 'An as-built job records the finished install, as measured. What is found out on the boat, such as the fitted length of a seal or a reading, is not known while it is assumed. [docs/status.md](../../status.md) lists these facts. A value that is worked out from an assumed one is assumed too, and a fitted length that is worked out was not measured. Before `as-built` they may be assumed: results name them.',
  source: theLanguage,
  on: 'every kind',
  fires: job('assumed', '#                  ^^^^^^ fitted-length is assumed\n'),
  quiet: job('measured'),
  run: (_facts, context) =>
    assumedFacts(context).map((fact) =>
      at(fact, {
        severity: severityOfMissing(context.status),
        plan: 'goes-on',
        message: `${fact.name} is ${isAssumed(fact) ? 'assumed' : 'worked out'}, but an as-built job records what was found on the boat.`,
        todo: 'Measure or check it on the boat, then correct the value and its origin. Until then set the status back to issued.',
        found: isAssumed(fact) ? '[assumed]' : 'worked out from other facts',
      }),
    ),
})
