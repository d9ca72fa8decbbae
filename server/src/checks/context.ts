import type { Block } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { formatBand, formatBoth } from '../quantity/format.ts'
import type { BlockName } from '../vocabulary/index.ts'
import type { Context } from './check.ts'

/** The only one of the kind; none when there are several to choose from. */
const only = (blocks: readonly Block[], kind: string): Block | undefined => {
  const all = blocks.filter((block) => block.kind === kind)
  return all.length === 1 ? all[0] : undefined
}

export function nearBlock(block: Block, kind: BlockName, scope: Scope): Block | undefined {
  for (let b: Block | undefined = block; b; b = b.parent) {
    if (b.kind === kind) return b
    const inside = only(b.children, kind)
    if (inside) return inside
  }
  const named = block.kind === 'drive' || block.parent ? referenced(block, kind, scope) : undefined
  return named ?? only(scope.ofKind(kind), kind)
}

/** A drive says by name which shared block it uses: `battery: house`. */
function referenced(block: Block, kind: string, scope: Scope): Block | undefined {
  for (let b: Block | undefined = block; b; b = b.parent) {
    const name = b.facts.get(kind)?.value
    if (typeof name === 'string') return scope.named(name)
  }
  return undefined
}

export function namedBlock(block: Block, path: string, scope: Scope): Block | undefined {
  const [head = '', ...rest] = path.split('.')
  const among = (blocks: readonly Block[]) => blocks.find((b) => b.name === head) ?? only(blocks, head)
  let found: Block | undefined
  for (let b = block.parent; b && !found; b = b.parent) found = among(b.children)
  found ??= scope.named(head) ?? only(scope.ofKind(head), head)
  for (const segment of rest)
    found = found?.children.find((b) => b.name === segment) ?? (found && only(found.children, segment))
  return found
}

export const contextOf = (block: Block, scope: Scope): Context => ({
  block,
  near: (kind) => nearBlock(block, kind, scope),
  named: (path) => namedBlock(block, path, scope),
  show: (si, kind) => formatBoth(si, kind, scope.system()),
  showBand: (band, kind) => formatBand(band, kind, scope.system()),
})
