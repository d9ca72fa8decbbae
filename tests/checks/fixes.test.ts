import { describe, expect, it } from 'vitest'
import type { Check, Finding } from '../../server/src/checks/check.ts'
import { allChecks } from '../../server/src/checks/index.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { applied, type Offered, offersOf } from './offers.ts'

/** What a finding says, wherever it stands: a fix may move lines. */
const key = (finding: Finding) => `${finding.check}: ${finding.message}`
const counted = (findings: readonly Finding[]) => Map.groupBy(findings, key)

/** Findings of the second list that are not in the first. */
function added(before: readonly Finding[], after: readonly Finding[]): readonly Finding[] {
  const had = counted(before)
  return [...counted(after)].flatMap(([words, list]) => list.slice(had.get(words)?.length ?? 0))
}

/** The laws of a fix, over a text that has the finding. */
function obeysLaws(text: string, check: Check): readonly Offered[] {
  const { findings, offers } = offersOf(text, check.id)
  for (const { finding, fix, document } of offers) {
    const after = applied(document, fix)
    const again = offersOf(after, check.id)
    const leaves = fix.leaves ?? []
    // Its finding goes, unless the fix says that something is left to do.
    if (!leaves.includes(check.id))
      expect(again.findings.filter((f) => key(f) === key(finding)).length).toBe(
        findings.filter((f) => key(f) === key(finding)).length - 1,
      )
    // No new one comes that the fix does not declare.
    expect(
      added(findings, again.findings)
        .filter(({ check: id, severity }) => severity !== 'information' && !leaves.includes(id))
        .filter(({ check: id }) => !(fix.uncovers && !id.startsWith('job/')))
        .map(key),
    ).toEqual([])
    // Twice is once: what it does is not offered again for the same finding.
    const twice = again.offers.filter((o) => key(o.finding) === key(finding) && o.fix.title === fix.title)
    if (!leaves.includes(check.id)) expect(twice).toEqual([])
    // What was laid out by the formatter still is.
    const laid = formatText(text)
    const same = offersOf(laid, check.id).offers.find((o) => o.fix.title === fix.title)
    expect(same && formatText(applied(same.document, same.fix))).toBe(
      same && applied(same.document, same.fix),
    )
  }
  return offers
}

describe('the laws of fixes, over the example of each check that has some', () => {
  const withFixes = allChecks.filter((c) => c.fixes)
  it.each(withFixes.map((c) => [c.id, c] as const))('%s', (_id, c) => {
    expect(obeysLaws(c.fires, c).length).toBeGreaterThan(0)
  })
})
