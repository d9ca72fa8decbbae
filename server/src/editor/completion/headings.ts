import { ours, paragraphs, prose } from '../../areas/common/markdown.ts'
import { allChecks } from '../../areas/index.ts'
import type { Finding } from '../../checks/check.ts'
import { isConcedable } from '../../checks/concessions.ts'
import { findKind } from '../../vocabulary/index.ts'
import type { CursorContext } from './cursor-context.ts'
import { readingsFor } from './names-in-scope.ts'
import { type CompletionContext, type Offer, word } from './offer.ts'

const checks: readonly Offer[] = allChecks
  .filter(({ id, severity }) => isConcedable({ check: id, severity }))
  .map(({ id, title, why, source }) =>
    word(id, {
      kind: 'check',
      detail: title,
      doc: paragraphs(ours(why), prose(`Source (${source.basis}): ${source.text}`)),
    }),
  )

/** Those that find something come first. */
function checksFor(findings: readonly Finding[]): readonly Offer[] {
  const found = new Set(findings.map(({ check }) => check))
  const firing = checks.filter(({ label }) => found.has(label))
  return [
    ...firing.map((offer) => ({ ...offer, detail: `${offer.detail}: found in this file` })),
    ...checks.filter((offer) => !firing.includes(offer)),
  ]
}

/** What may stand between a block's kind and its brace. */
export function headingOffers(
  { block, findings }: CompletionContext,
  { kind, words }: CursorContext & { readonly on: 'heading' },
): readonly Offer[] {
  const heading = findKind(kind)?.heading
  if (heading === 'check') return words.length === 0 ? checksFor(findings()) : []
  if (heading !== 'after' || !block) return []
  const readings = readingsFor(block)
  const detail = (i: number) => (i === 0 ? { detail: 'the last reading' } : {})
  if (words.length === 0)
    return readings.map((name, i) => word(`after ${name}`, { kind: 'name', ...detail(i) }))
  return words.length === 1 && words[0] === 'after'
    ? readings.map((name, i) => word(name, { kind: 'name', ...detail(i) }))
    : []
}
