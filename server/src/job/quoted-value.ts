import { parseSection } from '../syntax/parser.ts'
import type { FactNode, Part, Span } from '../syntax/tree.ts'
import type { Section } from './model.ts'
import type { Text } from './texts.ts'

/** A value with quotes in it, as it would be without them. */
export interface Unquoted {
  readonly span: Span
  readonly meant: string
  readonly section: Section
  readonly node: FactNode
}

const isText = ({ type }: Part): boolean => type === 'text'

/** Whether a text in it has no closing quote, which is told already. */
export const hasOpenText = ({ entries }: FactNode, text: string): boolean =>
  entries.some(({ parts }) =>
    parts.some(
      (part) => isText(part) && !/^.+["”„‟’‘‛«»‹›']$/su.test(text.slice(part.span.start, part.span.end)),
    ),
  )

export function withoutQuotes(node: FactNode, text: string): Unquoted | undefined {
  const quoted = node.entries.flatMap(({ parts }) => parts.filter(isText))
  const [first, last] = [quoted[0], quoted.at(-1)]
  if (!first || !last) return undefined
  const span = { start: first.span.start, end: last.span.end }
  const without = (from: number, to: number) => text.slice(from, to).replaceAll('"', '')
  const meant = without(span.start, span.end)
  const { start, end } = node.valueSpan
  const fact = `${node.name.text}: ${without(start, end)}`
  const parsed = parseSection(fact)
  const [item, more] = parsed.tree.items
  if (more || item?.type !== 'fact' || item.entries.length === 0 || parsed.problems.length > 0)
    return undefined
  return { span, meant, section: { text: fact, parsed }, node: item }
}

/** Whether a value can be read from a text of its own; a number with separators is told once the quotes are off. */
export function canBeRead(section: Section, readFrom: (text: Text) => unknown): boolean {
  const problems: string[] = []
  const value = readFrom({
    section,
    placeOf: (span) => ({ section, span }),
    report: (_span, { type }) => void problems.push(type),
    refer: () => undefined,
  })
  const isSeparated = problems.length > 0 && problems.every((type) => separators.has(type))
  return isSeparated || (problems.length === 0 && value !== undefined)
}

const separators: ReadonlySet<string> = new Set(['decimal-comma', 'thousands-separator', 'comma-unclear'])
