import { segmentsOf } from '../syntax/segments.ts'
import { deepest } from '../syntax/tokens.ts'
import type { Leaf } from '../syntax/tree.ts'
import { blockNamed, ofKind, ofName, type Place, type Section } from './model.ts'

/** A block as a path leads through it. */
interface Passed<B> {
  readonly kind: string
  readonly name: string | undefined
  readonly children: readonly B[]
}

type Inside<B> = B & { readonly parent: Inside<B> | undefined }

interface Wanted<B> {
  readonly roots: readonly B[]
  readonly scope: { named(name: string): B | undefined; only(kind: string): B | undefined }
  /** Looks outwards from here, then in the section, in the file, in the files it uses. */
  readonly from: Inside<B> | undefined
  readonly kinds: readonly string[] | undefined
  /** Not this one: a block is not like itself. */
  readonly not: B | undefined
}

/** No path with more segments leads anywhere: no block is so deep inside others. */
export const longestPath = deepest

/** The blocks that the segments of a path stand for, the last of them the one that is meant. */
export function lookFor<B extends Passed<B>>(path: string, wanted: Wanted<B>): readonly B[] | undefined {
  const { roots, scope, from, kinds, not } = wanted
  const [head = '', ...rest] = path.split('.')
  if (rest.length >= longestPath) return undefined
  const fits = (b: B) => b !== not && (rest.length > 0 || !kinds || kinds.includes(b.kind))
  const among = (blocks: readonly B[]): B | undefined => {
    const named = ofName(blocks, head).find(fits)
    if (named) return named
    const alike = ofKind(blocks, head)
    if (alike.length > 2) return undefined // of which one at most does not fit
    const fitting = alike.filter(fits)
    return fitting.length === 1 ? fitting[0] : undefined
  }
  let found: B | undefined
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
  const blocks: B[] = []
  for (const segment of rest) {
    if (!found) return undefined
    blocks.push(found)
    const inner: readonly B[] = found.children
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
export function alongPath<T>(
  path: Leaf,
  blocks: readonly T[],
  section: Section,
): readonly { readonly at: Place; readonly to: T }[] {
  const spans = segmentsOf(path, section.text)
  return blocks.flatMap((to, i) => {
    const span = spans[i]
    return span ? [{ at: { section, span }, to }] : []
  })
}
