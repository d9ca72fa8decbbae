import { segmentsOf } from '../syntax/segments.ts'
import { deepest } from '../syntax/tokens.ts'
import type { Leaf } from '../syntax/tree.ts'
import { type Block, blockNamed, nameOf, ofKind, ofName, type Reference, type Section } from './model.ts'
import type { Scope } from './scope.ts'

interface Wanted {
  readonly roots: readonly Block[]
  readonly scope: Scope
  /** Looks outwards from here, then in the section, in the file, in the files it uses. */
  readonly from: Block | undefined
  readonly kinds: readonly string[] | undefined
  /** Not this one: a block is not like itself. */
  readonly not: Block | undefined
}

/** No path with more segments leads anywhere: no block is so deep inside others. */
export const longestPath = deepest

/** The blocks that the segments of a path stand for, the last of them the one that is meant. */
export function lookFor(path: string, wanted: Wanted): readonly Block[] | undefined {
  const { roots, scope, from, kinds, not } = wanted
  const [head = '', ...rest] = path.split('.')
  if (rest.length >= longestPath) return undefined
  const fits = (b: Block) => b !== not && (rest.length > 0 || !kinds || kinds.includes(b.kind))
  const among = (blocks: readonly Block[]): Block | undefined => {
    const named = ofName(blocks, head).find(fits)
    if (named) return named
    const alike = ofKind(blocks, head)
    if (alike.length > 2) return undefined // of which one at most does not fit
    const fitting = alike.filter(fits)
    return fitting.length === 1 ? fitting[0] : undefined
  }
  let found: Block | undefined
  for (let b = from; b && !found; b = b.parent) found = among(b.children) ?? among([b])
  if (!found) found = among(roots)
  if (!found) {
    const top = scope.named(head)
    if (top && fits(top)) found = top
    else {
      const only = scope.only(head)
      if (only && fits(only)) found = only
    }
  }
  const blocks: Block[] = []
  for (const segment of rest) {
    if (!found) return undefined
    blocks.push(found)
    const inner: readonly Block[] = found.children
    const alike = ofKind(inner, segment)
    found = blockNamed(inner, segment) ?? (alike.length === 1 ? alike[0] : undefined)
  }
  return found && (!kinds || kinds.includes(found.kind)) ? [...blocks, found] : undefined
}

/** What is found for a path, or else for the longest beginning of it for which anything is. */
export function furthestPath<T>(path: string, find: (path: string) => T | undefined): T | undefined {
  const segments = path.split('.').slice(0, longestPath)
  for (; segments.length > 0; segments.pop()) {
    const found = find(segments.join('.'))
    if (found !== undefined) return found
  }
  return undefined
}

/** What the segments of a path stand for. */
export function alongPath(path: Leaf, blocks: readonly Block[], section: Section): readonly Reference[] {
  const spans = segmentsOf(path, section.text)
  return blocks.flatMap((to, i) => {
    const span = spans[i]
    return span ? [{ at: { section, span }, to, named: nameOf(to) }] : []
  })
}
