import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import type { Section } from '../../job/model.ts'
import type { BlockNode, FactNode, Span } from '../../syntax/tree.ts'
import { findKind } from '../../vocabulary/index.ts'

/** A block as an outline shows it. */
export interface BlockSymbol {
  /** Its name or title, or what it is about; without one its kind. */
  readonly name: string
  readonly kind: string
  /** `motor, power 15 kW, speed 1500 rpm`. */
  readonly detail: string
  readonly span: Span
  readonly nameSpan: Span
  readonly children: readonly BlockSymbol[]
}

/** The blocks of a section, from its tree alone. */
export const symbolsOf = memoizeByIdentity(({ parsed: { tree }, text }: Section): readonly BlockSymbol[] =>
  within(tree.items, text),
)

const within = (items: BlockNode['items'], text: string): readonly BlockSymbol[] =>
  items.flatMap((item) => (item.type === 'block' ? [symbol(item, text)] : []))

function symbol(node: BlockNode, text: string): BlockSymbol {
  const { kind, heading, headSpan, span } = node
  const name = findKind(kind.text)?.heading === 'after' ? words(text, headSpan) : nameOf(node)
  return {
    name: name ?? kind.text,
    kind: kind.text,
    detail: [...(name === undefined ? [] : [kind.text]), ...headingDetail(node, text)].join(', '),
    span,
    nameSpan: heading[0]?.span ?? kind.span,
    children: within(node.items, text),
  }
}

function nameOf({ heading: [first] }: BlockNode): string | undefined {
  const name = first && 'text' in first ? first.text.trim() : ''
  return name === '' ? undefined : name
}

/** What a reader of an outline looks for first: what the block is like, and the two facts that its kind names first. */
function headingDetail({ kind, items }: BlockNode, text: string): readonly string[] {
  const facts = items.filter((item): item is FactNode => item.type === 'fact' && item.entries.length > 0)
  const order = ['like', ...Object.keys(findKind(kind.text)?.facts ?? {})]
  return facts
    .filter(({ name }) => order.includes(name.text))
    .sort((a, b) => order.indexOf(a.name.text) - order.indexOf(b.name.text))
    .slice(0, 2)
    .map(({ name, valueSpan }) => `${name.text} ${words(text, valueSpan)}`)
}

const words = (text: string, { start, end }: Span): string => text.slice(start, end).replace(/\s+/g, ' ')
