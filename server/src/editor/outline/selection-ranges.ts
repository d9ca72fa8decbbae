import type { Section } from '../../job/model.ts'
import { segmentsOf } from '../../syntax/segments.ts'
import { Comment, endOf } from '../../syntax/tokens.ts'
import {
  type BlockNode,
  contains,
  type Entry,
  type FactNode,
  type Item,
  insideOf,
  type LineNode,
  type Part,
  type Span,
} from '../../syntax/tree.ts'

/** The spans around an offset from the widest to the word itself, each inside the one before. */
export function selectionSpans(section: Section, offset: number): readonly Span[] {
  const spans: Span[] = []
  const add = (span: Span): void => {
    const last = spans.at(-1)
    const inside = !last || (last.start <= span.start && span.end <= last.end)
    const smaller = !last || span.end - span.start < last.end - last.start
    if (contains(span, offset) && inside && smaller && span.end > span.start) spans.push(span)
  }
  const comment = section.parsed.tree.tokens.find(
    (token) => token.tokenType === Comment && token.startOffset <= offset && offset <= endOf(token),
  )
  const within = (items: readonly Item[]): void => {
    const item = items.find(({ span }) => contains(span, offset))
    if (!item) return
    add(item.span)
    if (item.type === 'block') {
      add(item.headSpan)
      for (const span of [item.kind.span, ...item.heading.map((part) => part.span)]) add(span)
      add(bodyOf(item, section.text))
      within(item.items)
    } else inLine(item)
  }
  const inLine = (item: FactNode | LineNode): void => {
    if (item.type === 'fact') for (const span of [item.name.span, item.valueSpan]) add(span)
    const { provenance } = item
    if (provenance) for (const { span } of [provenance, ...provenance.words, ...provenance.texts]) add(span)
    for (const entry of item.entries) inEntry(entry)
  }
  const inEntry = ({ span, parts }: Entry): void => {
    add(span)
    for (const part of parts) inPart(part)
  }
  const inPart = (part: Part): void => {
    if (!contains(part.span, offset)) return
    add(part.span)
    for (const inner of insideOf(part)) inPart(inner)
    if (part.type === 'word') for (const span of segmentsOf(part, section.text)) add(span)
    if ('unit' in part && part.unit) add(part.unit.span)
  }
  within(section.parsed.tree.items)
  if (comment) add({ start: comment.startOffset, end: endOf(comment) })
  return spans
}

/** What stands between the braces. */
function bodyOf({ headSpan, span }: BlockNode, text: string): Span {
  const start = text.indexOf('{', headSpan.end) + 1
  const end = text[span.end - 1] === '}' ? span.end - 1 : span.end
  const body = text.slice(start, end)
  const space = body.length - body.trimStart().length
  return { start: start + space, end: start + body.trimEnd().length }
}
