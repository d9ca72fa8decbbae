import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import type { Document } from '../../job/document.ts'
import { namedBlock, nearBlock } from '../../job/lookup.ts'
import { type Block, childrenOf, factOf, type Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { Scope } from '../../job/scope.ts'
import type { Kind } from '../../quantity/kinds.ts'
import { isName } from '../../syntax/segments.ts'
import { findKind } from '../../vocabulary/index.ts'

/** A block by the name it goes by. */
export interface NamedBlock {
  readonly path: string
  readonly kind: string
}

interface TopBlock extends NamedBlock {
  readonly children: readonly NamedBlock[]
}

/** Top-level blocks of a section, from its tree alone. */
const topsOf = memoizeByIdentity((section: Section): readonly TopBlock[] => {
  const named = (item: Section['parsed']['tree']['items'][number]): readonly TopBlock[] => {
    if (item.type !== 'block') return []
    const [first] = item.heading
    const path = first?.type === 'word' ? first.text : item.kind.text
    return [{ path, kind: item.kind.text, children: item.items.flatMap(named) }]
  }
  return section.parsed.tree.items.flatMap(named)
})

const topsIn = ({ sections }: Document): readonly TopBlock[] => sections.flatMap(topsOf)

/** Top-level blocks of the file and of those it uses. */
export const topBlocks = ({ file }: View): readonly TopBlock[] =>
  [file, ...file.used].flatMap(({ document }) => topsIn(document))

const nameIn = ({ name, kind }: Block): string => name ?? kind

/** Blocks of the kinds, by the names that stand for them where the block is: those beside it first, then outwards. */
export function blocksInScope(
  view: View,
  block: Block | undefined,
  kinds: readonly string[],
): readonly NamedBlock[] {
  const near: NamedBlock[] = []
  for (let b = block?.parent; b; b = b.parent)
    near.push(
      ...b.children
        .filter((child) => child !== block && kinds.includes(child.kind))
        .map((child) => ({ path: nameIn(child), kind: child.kind })),
    )
  const top = topBlocks(view).filter(
    ({ kind, path }) => kinds.includes(kind) && !(block && !block.parent && path === nameIn(block)),
  )
  return eachOnce([...near, ...top])
}

/** Blocks that a block may be like: of its kind, in scope or in another drive. */
export function likeInScope(view: View, block: Block): readonly NamedBlock[] {
  const elsewhere = topBlocks(view)
    .filter(({ path }) => path !== outermost(block).path)
    .flatMap(({ path, children }) =>
      children
        .filter(({ kind }) => kind === block.kind)
        .map((child) => ({ path: `${path}.${child.path}`, kind: child.kind })),
    )
  return eachOnce([...blocksInScope(view, block, [block.kind]), ...elsewhere])
}

const outermost = (block: Block): Block => (block.parent ? outermost(block.parent) : block)

const eachOnce = (names: readonly NamedBlock[]): readonly NamedBlock[] =>
  [...new Map(names.toReversed().map((named) => [named.path, named])).values()].toReversed()

/** Blocks inside the one that a path stands for. */
export function blocksBehind(block: Block, scope: Scope, path: string): readonly NamedBlock[] {
  const holder = namedBlock(block, path, scope)
  return (holder?.children ?? []).map((child) => ({ path: `${path}.${nameIn(child)}`, kind: child.kind }))
}

export interface NamedFact {
  readonly path: string
  readonly block: Block
  readonly name: string
}

/** Facts with an amount of the kind: of the block and those around it, of the blocks beside it, or behind a dot of the one that is named. */
export function factsInScope(
  block: Block,
  scope: Scope,
  { kind, holder, but }: { readonly kind: Kind; readonly holder: string | undefined; readonly but: string },
): readonly NamedFact[] {
  const of = (owner: Block, prefix: string): NamedFact[] =>
    Object.entries(findKind(owner.kind)?.facts ?? {}).flatMap(([name, { shape }]) =>
      shape.quantity === kind && isAmount(owner.facts.get(name)?.value) && !(owner === block && name === but)
        ? [{ path: `${prefix}${name}`, block: owner, name }]
        : [],
    )
  if (holder !== undefined) {
    const named = namedBlock(block, holder, scope)
    return named ? of(named, `${holder}.`) : []
  }
  const found = of(block, '')
  for (let b = block.parent; b; b = b.parent) {
    found.push(...of(b, ''))
    for (const child of b.children) if (child !== block) found.push(...of(child, `${nameIn(child)}.`))
  }
  return found
}

const isAmount = (value: unknown): boolean =>
  typeof value === 'number' ||
  (typeof value === 'object' && value !== null && 'nominal' in value && value.nominal !== undefined)

const driveOf = (block: Block): Block => {
  const around = block.kind === 'drive' ? block : block.parent
  return around && around !== block ? driveOf(around) : block
}

/** Names of the feet of the bed that goes with a block. */
export const feetFor = (block: Block, scope: Scope): readonly string[] => {
  const bed = nearBlock(block, 'bed', scope)
  return bed ? childrenOf(bed, 'foot').flatMap(({ name }) => name ?? []) : []
}

/** Names of the readings of the drive, the last written first. */
export const readingsFor = (block: Block): readonly string[] =>
  childrenOf(driveOf(block), 'reading')
    .flatMap(({ name }) => name ?? [])
    .toReversed()

/** Marks of the phase terminals of the controller or the motor that goes with a block, as they are written: those that are no words in quotes. */
export function terminalsFor(block: Block, scope: Scope, of: 'controller' | 'motor'): readonly string[] {
  const device = nearBlock(block, of, scope)
  const marks = device ? (factOf(device, `${of}.terminals`)?.value ?? []) : []
  return marks.map(({ name }) => (isName(name) ? name : `"${name}"`))
}
