import { segmentsOf } from '../syntax/segments.ts'
import type { Leaf } from '../syntax/tree.ts'
import { type Block, nameOf, type Reference, type Section } from './model.ts'
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

/** The blocks that the segments of a path stand for, the last of them the one that is meant. */
export function lookFor(path: string, wanted: Wanted): readonly Block[] | undefined {
  const { roots, scope, from, kinds, not } = wanted
  const [head = '', ...rest] = path.split('.')
  const fits = (b: Block) => b !== not && (rest.length > 0 || !kinds || kinds.includes(b.kind))
  const among = (blocks: readonly Block[]): Block | undefined => {
    const named = blocks.find((b) => b.name === head && fits(b))
    if (named) return named
    const ofKind = blocks.filter((b) => b.kind === head && fits(b))
    return ofKind.length === 1 ? ofKind[0] : undefined
  }
  let found: Block | undefined
  for (let b = from; b && !found; b = b.parent) found = among(b.children) ?? among([b])
  if (!found) found = among(roots)
  if (!found) {
    const top = scope.named(head)
    if (top && fits(top)) found = top
    else {
      const ofKind = scope.ofKind(head).filter(fits)
      if (ofKind.length === 1) found = ofKind[0]
    }
  }
  const blocks: Block[] = []
  for (const segment of rest) {
    if (!found) return undefined
    blocks.push(found)
    const inner: readonly Block[] = found.children
    const byKind = inner.filter((b) => b.kind === segment)
    found = inner.find((b) => b.name === segment) ?? (byKind.length === 1 ? byKind[0] : undefined)
  }
  return found && (!kinds || kinds.includes(found.kind)) ? [...blocks, found] : undefined
}

/** What is found for a path, or else for the longest beginning of it for which anything is. */
export function furthestPath<T>(path: string, find: (path: string) => T | undefined): T | undefined {
  const dot = path.lastIndexOf('.')
  return find(path) ?? (dot < 0 ? undefined : furthestPath(path.slice(0, dot), find))
}

/** What the segments of a path stand for. */
export function alongPath(path: Leaf, blocks: readonly Block[], section: Section): readonly Reference[] {
  const spans = segmentsOf(path, section.text)
  return blocks.flatMap((to, i) => {
    const span = spans[i]
    return span ? [{ at: { section, span }, to, named: nameOf(to) }] : []
  })
}
