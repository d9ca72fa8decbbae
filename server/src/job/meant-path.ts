import { nearest } from '../quantity/nearest.ts'
import type { Draft } from './draft.ts'
import { longestPath } from './look-for.ts'
import { amountsOf, Other, type Outside } from './other.ts'

interface SearchedPath {
  /** Kinds of the block that was wanted; without them a fact with an amount. */
  readonly kinds: readonly string[] | undefined
  readonly from: Draft
  readonly scope: Outside
  /** The blocks that a path leads through, as far as it does. */
  readonly furthest: (path: string) => readonly (Draft | Other)[]
}

/** Among more names than this none is offered for one that is not found. */
const maxOffered = 500

/** The path that was meant where this one leads nowhere: each segment that is not there is the nearest that is. Undefined when one has none. */
export function meantPath(path: string, sought: SearchedPath): string | undefined {
  const segments = path.split('.')
  if (segments.length > longestPath) return undefined
  for (;;) {
    const along = sought.furthest(segments.join('.'))
    const wrong = along.length
    const isLast = wrong === segments.length - 1
    const near = nearest(segments[wrong] ?? '', namesIn(along.at(-1), isLast, sought))
    if (near === undefined || (near === segments[wrong] && !isLast)) return undefined
    segments[wrong] = near
    if (!isLast) continue
    const meant = segments.join('.')
    return meant === path ? undefined : meant
  }
}

/** What may stand in a path behind a block, or without one at its beginning. */
function namesIn(
  holder: Draft | Other | undefined,
  isLast: boolean,
  { kinds, from, scope }: SearchedPath,
): Set<string> {
  const fits = (kind: string | undefined) => !isLast || !kinds || (kind !== undefined && kinds.includes(kind))
  const hasAmount = isLast && !kinds
  const known = new Set<string>()
  const take = (block: Draft | Other) => {
    if (block.children.length <= maxOffered)
      for (const child of block.children) if (fits(child.kind)) known.add(child.name ?? child.kind)
    if (hasAmount)
      for (const name of block instanceof Other ? block.amounts : amountsOf(block)) known.add(name)
  }
  if (holder) {
    take(holder)
    return known
  }
  const names = scope.names()
  if (names.length <= maxOffered) for (const name of names) if (fits(scope.kindOf(name))) known.add(name)
  for (let block: Draft | undefined = from; block; block = block.parent) take(block)
  return known
}
