import type { Leaf, Provenance } from '../syntax/tree.ts'
import { closestMatch } from '../vocabulary/closest-match.ts'
import { provenanceWords } from '../vocabulary/form.ts'
import { isDate } from '../vocabulary/shape.ts'
import type { Text } from './texts.ts'

/** A misspelt origin would pass for one: a value that is assumed for one that is not. */
export function originKnown({ words: [word, ...more], texts, span }: Provenance, text: Text): void {
  const known = Object.keys(provenanceWords)
  const isClosed = text.section.text[span.end - 1] === ']'
  if (word && known.includes(word.text)) {
    const number = texts[0]
    if (number?.text.trim() === '')
      text.report(number.span, { type: 'not-this-value', expected: 'a number or a name in quotes' })
    if (word.text === 'measured') for (const one of more) dayKnown(one, known, text)
    return
  }
  if (!word && texts.length === 0 && !isClosed) return
  const near = word && closestMatch(word.text, known)
  const expected = `one of ${known.join(', ')}`
  text.report(word?.span ?? span, { type: 'not-this-value', expected, ...(near && { nearest: near }) })
}

/** What follows `measured` is the day. */
function dayKnown({ text: written, span }: Leaf, known: readonly string[], text: Text): void {
  if (known.includes(written)) return
  if (!/^\d{4}-\d{2}-\d{2}/.test(written))
    text.report(span, { type: 'not-this-value', expected: 'a date, such as 2026-03-04' })
  else if (!isDate(written)) text.report(span, { type: 'no-such-date', text: written })
}
