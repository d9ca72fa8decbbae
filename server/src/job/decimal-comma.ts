import type { Entry, Span } from '../syntax/tree.ts'

/** `35,2 mm`: digits, a comma without space, digits. */
export function decimalComma(
  entries: readonly Entry[],
  text: string,
): { readonly span: Span; readonly meant: string } | undefined {
  for (let i = 1; i < entries.length; i++) {
    const last = entries[i - 1]?.parts.at(-1)
    const next = entries[i]?.parts[0]
    if (last?.type !== 'amount' || last.unit || next?.type !== 'amount') continue
    if (next.span.start !== last.span.end + 1) continue
    const span = { start: last.span.start, end: next.span.end }
    return { span, meant: text.slice(span.start, span.end).replace(',', '.') }
  }
  return undefined
}
