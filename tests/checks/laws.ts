import { expect } from 'vitest'
import type { Check, Finding } from '../../server/src/checks/check.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { applied, type Offered, type Offers, type Options, offersOf } from './offers.ts'

/** What a finding says, wherever it stands: a fix may move lines. */
const key = (finding: Finding) => `${finding.check}: ${finding.message}`

/** Findings of the second list that the first has fewer of: one whose figures are others is no new one. */
function added(before: readonly Finding[], after: readonly Finding[]): readonly Finding[] {
  const left = before.map(({ check }) => check)
  return after.filter(({ check }) => {
    const had = left.indexOf(check)
    if (had >= 0) left.splice(had, 1)
    return had < 0
  })
}

/** What a fix does that no fix may do, in words; nothing when it obeys the laws. `loose`: what becomes readable may have faults of its own. */
export function broken(
  { finding, fix, document }: Offered,
  before: Offers,
  options: Options & { readonly loose?: boolean } = {},
): string[] {
  const { loose = false } = options
  const after = applied(document, fix)
  const again = offersOf(after, finding.check, options)
  const leaves = fix.leaves ?? []
  const same = (findings: readonly Finding[]) => findings.filter((f) => key(f) === key(finding)).length
  const laid = formatText(after)
  return [
    // Its finding goes, unless the fix says that something is left to do.
    ...(leaves.includes(finding.check) || same(again.findings) === same(before.findings) - 1
      ? []
      : [`${key(finding)} stays`]),
    // No new one comes that the fix does not declare.
    ...added(before.findings, again.findings)
      .filter(({ check: id, severity }) => severity !== 'information' && !leaves.includes(id))
      .filter(({ check: id }) => !(fix.uncovers && (loose || !id.startsWith('job/'))))
      .map((f) => `${key(f)} comes`),
    // Twice is once: what it does is not offered again for the same finding.
    ...(again.offers.filter((o) => key(o.finding) === key(finding) && o.fix.title === fix.title).length <
    before.offers.filter((o) => key(o.finding) === key(finding) && o.fix.title === fix.title).length
      ? []
      : [`${fix.title} is offered again`]),
    // What was laid out by the formatter still is.
    ...(formatText(before.text) !== before.text || laid === after ? [] : ['not laid out']),
  ]
}

/** The offers for the example of a check, each held to the laws: as it is, and laid out. */
export function obeysLaws(text: string, check: Check, options: Options = {}): readonly Offered[] {
  for (const job of [text, formatText(text)]) {
    const before = offersOf(job, check.id, options)
    for (const offered of before.offers) expect(broken(offered, before, options)).toEqual([])
  }
  return offersOf(text, check.id, options).offers
}
