import { type BlockName, findKind } from '../vocabulary/index.ts'
import { lookFor } from './look-for.ts'
import { type Block, ofKind } from './model.ts'
import type { Scope } from './scope.ts'

/** The only one of the kind; none when there are several to choose from. */
function only(blocks: readonly Block[], kind: string): Block | undefined {
  const all = ofKind(blocks, kind)
  return all.length === 1 ? all[0] : undefined
}

/** The block of the kind that goes with this one: itself, one around it, the only one beside it or in the drive, the only one in the file. */
export function nearBlock(block: Block, kind: BlockName, scope: Scope): Block | undefined {
  for (let b: Block | undefined = block; b; b = b.parent) {
    if (b.kind === kind) return b
    const inside = only(b.children, kind)
    if (inside) return inside
  }
  const named = block.kind === 'drive' || block.parent ? referenced(block, kind, scope) : undefined
  return named ?? scope.only(kind)
}

/** A drive says by name which shared block it uses: `battery: house`. */
function referenced(block: Block, kind: string, scope: Scope): Block | undefined {
  for (let b: Block | undefined = block; b; b = b.parent) {
    const name = b.facts.get(kind)?.value
    if (typeof name === 'string') return scope.named(name)
  }
  return undefined
}

/** The block a name stands for, looked for from this block outwards. */
export function namedBlock(
  block: Block,
  path: string,
  scope: Scope,
  kinds?: readonly string[],
): Block | undefined {
  const found = lookFor(path, { roots: [], scope, from: block.parent, kinds, not: undefined })
  return found?.at(-1)
}

/** The block that a fact of this one names: of the kinds that the fact is about, since a name may be that of several. */
export function referredBlock(block: Block, fact: string, scope: Scope): Block | undefined {
  const name = block.facts.get(fact)?.value
  const kinds = findKind(block.kind)?.facts[fact]?.shape.refersTo
  return typeof name === 'string' && kinds ? namedBlock(block, name, scope, kinds) : undefined
}
