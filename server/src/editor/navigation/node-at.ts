import {
  type BlockNode,
  contains,
  type Entry,
  type FactNode,
  type Item,
  insideOf,
  type Leaf,
  type LineNode,
  type Part,
  type Provenance,
  type SectionTree,
} from '../../syntax/tree.ts'

/** What stands at an offset. `blocks`: those around it, outermost first. */
export type NodeAt = { readonly blocks: readonly BlockNode[] } & (
  | { readonly on: 'kind'; readonly block: BlockNode }
  | { readonly on: 'heading'; readonly block: BlockNode; readonly part: Part }
  | { readonly on: 'fact'; readonly fact: FactNode }
  | { readonly on: 'part'; readonly part: Part; readonly item: FactNode | LineNode }
  | { readonly on: 'unit'; readonly unit: Leaf; readonly item: FactNode | LineNode }
  | { readonly on: 'provenance'; readonly provenance: Provenance }
)

/** The one walk down a tree that hover and its like share. Undefined between things. */
export function nodeAt(tree: SectionTree, offset: number): NodeAt | undefined {
  return inItems(tree.items, offset, [])
}

function inItems(items: readonly Item[], offset: number, blocks: readonly BlockNode[]): NodeAt | undefined {
  for (const item of items) {
    if (!contains(item.span, offset)) continue
    const found = item.type === 'block' ? inBlock(item, offset, blocks) : inLine(item, offset, blocks)
    if (found) return found
  }
  return undefined
}

function inBlock(block: BlockNode, offset: number, around: readonly BlockNode[]): NodeAt | undefined {
  const blocks = [...around, block]
  if (contains(block.kind.span, offset)) return { blocks, on: 'kind', block }
  const part = block.heading.find(({ span }) => contains(span, offset))
  return part ? { blocks, on: 'heading', block, part } : inItems(block.items, offset, blocks)
}

function inLine(item: FactNode | LineNode, offset: number, blocks: readonly BlockNode[]): NodeAt | undefined {
  const fact = item.type === 'fact' ? item : undefined
  if (fact && contains(fact.name.span, offset)) return { blocks, on: 'fact', fact }
  const { provenance } = item
  if (provenance && contains(provenance.span, offset)) return { blocks, on: 'provenance', provenance }
  const part = innermost(item.entries, offset)
  if (!part) return undefined
  const unit = 'unit' in part ? part.unit : undefined
  return unit && contains(unit.span, offset)
    ? { blocks, on: 'unit', unit, item }
    : { blocks, on: 'part', part, item }
}

function innermost(entries: readonly Entry[], offset: number): Part | undefined {
  let part = entries.flatMap((entry) => entry.parts).find(({ span }) => contains(span, offset))
  for (let inner = part; inner; inner = insideOf(inner).find(({ span }) => contains(span, offset)))
    part = inner
  return part
}
