import type { Leaf, Span } from '../syntax/tree.ts'
import { either } from '../vocabulary/shape.ts'
import type { Draft } from './draft.ts'
import { alongPath, furthestPath, lookFor } from './look-for.ts'
import { meantPath } from './meant-path.ts'
import type { Mention } from './model.ts'
import { Other } from './other.ts'
import type { Surroundings, Text } from './texts.ts'

/** Finds what the names in values stand for, and reports those that stand for nothing. */
export function namesFor({ roots, scope }: Surroundings) {
  /** Without kinds, a fact with an amount was wanted. */
  function unresolved(
    { span }: { readonly span: Span },
    path: string,
    kinds: readonly string[] | undefined,
    from: Draft,
    text: Text,
  ): void {
    const wanted = kinds ? `a ${either(kinds)}` : 'a fact with an amount'
    const told = furthest(from, path)
    refer({ text: path, span }, told, text)
    const other = told.length === path.split('.').length ? told.at(-1) : undefined
    if (
      (other === from && kinds?.includes(from.kind)) ||
      (!other && scope.circular(path.split('.', 1)[0] ?? ''))
    ) {
      const round = kinds?.includes(from.kind)
        ? { likeOf: from.kind, isSelf: other === from || path === from.name }
        : 'blocks'
      text.report(span, { type: 'refers-to-itself', path, round })
      return
    }
    if (other) {
      text.report(span, { type: 'unresolved', path, wanted, is: other.kind })
      return
    }
    const near = meantPath(path, { kinds, from, scope, furthest: (part) => furthest(from, part) })
    text.report(span, { type: 'unresolved', path, wanted, ...(near && { nearest: near }) })
  }

  const findPath = (
    from: Draft | undefined,
    path: string,
    kinds: readonly string[] | undefined,
    not?: Draft,
  ): readonly (Draft | Other)[] | undefined =>
    lookFor<Draft | Other>(path, { roots, scope, from, kinds, not })

  /** The blocks of any kind that a path leads through, as far as it does. */
  const furthest = (from: Draft, path: string): readonly (Draft | Other)[] =>
    furthestPath(path, (part) => findPath(from, part, undefined)) ?? []

  const mentioned = (block: Draft | Other): Mention['to'] => (block instanceof Other ? block.way : block)

  const refer = (path: Leaf, blocks: readonly (Draft | Other)[], text: Text): void =>
    alongPath(path, blocks.map(mentioned), text.section).forEach(text.refer)

  function referToFact(part: Leaf, to: Draft | Other, text: Text): void {
    const fact = part.text.slice(part.text.lastIndexOf('.') + 1)
    const end = text.section.text.indexOf(part.text, part.span.start) + part.text.length
    const span = { start: end - fact.length, end }
    text.refer({ at: { section: text.section, span }, to: mentioned(to), fact })
  }

  return { findPath, refer, referToFact, unresolved }
}
