import { type Entry, type Part, type Span, withInside } from '../syntax/tree.ts'
import type { Fact } from '../vocabulary/block.ts'
import { type NumberContext, takesLimits } from './meanings.ts'

/** Dashes and hyphens that are no minus. The one in `1\u20111/4` is part of its number. */
const dash = /[\u2010\u2012-\u2015]|\u2011(?!\d+\/\d)/g

/** Dashes in a value, outside its texts: word processors and phones put them where a minus was typed. */
export function dashesIn(entries: readonly Entry[], { text, fact }: NumberContext): readonly Span[] {
  const [first, last] = [entries[0], entries.at(-1)]
  if (!first || !last || isRange(entries, fact)) return []
  const { start } = first.span
  const found = [...text.slice(start, last.span.end).matchAll(dash)].map(({ index }) => start + index)
  if (found.length === 0) return []
  const texts = entries
    .flatMap(({ parts }) => parts.flatMap(withInside))
    .filter(({ type }) => type === 'text')
  return found
    .filter((at) => !texts.some(({ span }) => span.start <= at && at < span.end))
    .map((at) => ({ start: at, end: at + 1 }))
}

/** `2.5-1`: a minus that touches what is before it and what is behind it. */
export function touchingMinus(entries: readonly Entry[], { fact }: NumberContext): Span | undefined {
  if (isRange(entries, fact)) return undefined
  return entries
    .flatMap(({ parts }) => parts.flatMap(withInside))
    .find((part) => isDifference(part) && part.right.span.start - part.left.span.end === 1)?.span
}

const isDifference = (part: Part): part is Part & { readonly type: 'operation' } =>
  part.type === 'operation' && part.operator === '-'

/** `84-108 V` where limits are wanted, which is told as such. */
function isRange([entry, more]: readonly Entry[], fact: Fact): boolean {
  const [part, further] = entry?.parts ?? []
  return (
    !more &&
    !further &&
    part !== undefined &&
    isDifference(part) &&
    part.left.type === 'amount' &&
    part.right.type === 'amount' &&
    takesLimits(fact)
  )
}
