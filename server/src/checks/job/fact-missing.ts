import { isTakenWhole } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { factIn } from '../../vocabulary/block.ts'
import { findKind } from '../../vocabulary/index.ts'
import { atHead, check, theLanguage } from '../check.ts'
import { addFact } from '../fix-text.ts'
import { formatMissing, missingFacts, severityOfMissing, whyRequired } from '../missing.ts'
import { isBesidePlan } from '../plan-facts.ts'

/** Whether the plan has to wait: it needs the fact, or a `?` stands where it would assume something. */
const plansWait = ({ block }: Lookup, name: string): boolean => {
  const from = findKind(block.kind)?.facts[name]?.from
  return !isBesidePlan(block.kind, name) && (from === 'draft' || block.blanks.has(name))
}

function todo(names: readonly string[], blanks: ReadonlySet<string>, example: string | undefined): string {
  const isBlank = names.every((name) => blanks.has(name))
  if (names.length > 1) return isBlank ? 'Fill them in.' : 'Write them, with a `?` for what is not known yet.'
  const such = example === undefined ? '' : `, such as \`${names[0]}: ${example}\``
  return isBlank ? `Fill it in${such}.` : `Write it${such}.`
}

export default check({
  id: 'job/fact-missing',
  severity: 'warning',
  followsStatus: true,
  title: 'Facts that the job still needs',
  why: 'What is not stated cannot be checked, and nobody can build from it. [docs/status.md](../../status.md) lists the facts that each status needs. Missing facts are information in a draft, a warning in a job for review or without a status, and an error from `issued` on. A fact with a `?` in its value is not known yet, and counts as missing.',
  source: theLanguage,
  on: 'every kind',
  fires: `job "Launch" {
  vessel: "Launch 07"
  status: draft
}
drive main {
  propeller { pitch: 300 mm }
# ^^^^^^^^^ One fact is still missing: diameter.
  seal { shaft-size: 35 mm  compression: ? mm }
# ^^^^ compression
}`,
  quiet: `job "Launch" {
  vessel: "Launch 07"
  status: draft
}
drive main {
  propeller { diameter: 420 mm  pitch: 300 mm }
  seal { shaft-size: 35 mm }
}`,
  run: (_facts, lookup) => {
    const names = missingFacts(lookup)
    const [first] = names
    if (first === undefined) return []
    const { block, status } = lookup
    const kind = findKind(block.kind)
    const example = kind && factIn(kind, first)?.example
    return [
      atHead(block, {
        severity: severityOfMissing(status),
        plan: names.some((name) => plansWait(lookup, name)) ? 'waits' : 'goes-on',
        message: formatMissing('fact', names),
        detail: whyRequired(status),
        todo: todo(names, block.blanks, example),
        limit: names.join(', '),
        data: { names },
      }),
    ]
  },
  fixes: (_finding, { block, lookup }) => {
    if (!block || !lookup || isTakenWhole(block)) return []
    const written = block.node.items.flatMap((item) => (item.type === 'fact' ? [item.name.text] : []))
    const names = missingFacts(lookup).filter(
      (name) => !written.includes(name) && !block.others.has(name) && !name.includes(' '),
    )
    const leaves = ['job/fact-missing']
    const each = names.map((name) => ({ title: `Add ${name}`, edits: [addFact(block, name)], leaves }))
    const [only] = each
    if (each.length < 2) return only ? [{ ...only, preferred: true }] : []
    const edits = each.flatMap((fix) => fix.edits)
    return [{ title: `Add the ${names.length} missing facts`, edits, leaves, preferred: true }, ...each]
  },
})
