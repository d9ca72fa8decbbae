import { at, check, theLanguage } from '../../../../checks/check.ts'
import { isRequired, severityOfMissing } from '../../../../checks/missing.ts'
import { isAssumed, type Value } from '../../../../job/model.ts'
import type { Lookup } from '../../../../store/lookup.ts'
import { withInside } from '../../../../syntax/tree.ts'
import { factIn, isFoundOnBoat } from '../../../../vocabulary/block.ts'
import { findKind } from '../../../../vocabulary/index.ts'
import { replacedBy } from '../../../alignment/plans/reading-history.ts'

/** Facts of a block that are assumed, where the status claims that they were found out on the boat. */
function assumedFacts(lookup: Lookup): readonly Value<unknown>[] {
  const { block, status } = lookup
  const kind = findKind(block.kind)
  if (status !== 'as-built' || !kind || !isRequired(lookup, kind)) return []
  if (block.kind === 'reading' && replacedBy(block, lookup)) return [] // it is history
  return [...block.facts.values(), ...block.others.values()].filter((value) => {
    const fact = factIn(kind, value.name)
    if (!fact || !isFoundOnBoat(fact)) return false
    return isAssumed(value) || (fact.perDrive && fact.from === 'as-built' && isWorkedOut(value))
  })
}

/** Whether an amount is taken or worked out from other facts, and so was not measured. */
const isWorkedOut = ({ value, node }: Value<unknown>): boolean =>
  typeof value === 'number' &&
  node.entries.some(({ parts }) => parts.flatMap(withInside).some(({ type }) => type === 'word'))

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
  run: (_facts, lookup) =>
    assumedFacts(lookup).map((fact) =>
      at(fact, {
        severity: severityOfMissing(lookup.status),
        plan: 'goes-on',
        message: `${fact.name} is ${isAssumed(fact) ? 'assumed' : 'worked out'}, but an as-built job records what was found on the boat.`,
        todo: 'Measure or check it on the boat, then correct the value and its origin. Until then set the status back to issued.',
        found: isAssumed(fact) ? '[assumed]' : 'worked out from other facts',
      }),
    ),
})
