import type { Block, Place, Section } from '../job/model.ts'
import { blockOf, nameOf } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import { referencesOf } from '../job/references.ts'
import { blocksIn, contains } from '../syntax/tree.ts'
import type { FileAround } from './around.ts'
import { mentionsAround } from './references.ts'
import { targetAt } from './target.ts'

/** A block in the hierarchy of `like`. */
export interface Relative {
  readonly block: Block
  readonly in: FileAround
}

/** The block that the word at an offset stands for, where it says or could say what it is like. */
export function relativeAt(
  view: View,
  { section, offset }: { readonly section: Section; readonly offset: number },
  around: readonly FileAround[],
): Relative | undefined {
  const target = targetAt(view, section, offset)
  return target?.is === 'block' ? holderOf(target.block, around) : undefined
}

function holderOf(block: Block, around: readonly FileAround[]): Relative | undefined {
  const holder = around.find(({ file }) => file.document.sections.includes(block.section))
  return holder && { block, in: holder }
}

/** The block it is like. */
export function supertype(view: View, block: Block, around: readonly FileAround[]): Relative | undefined {
  const like = likeOf(block)
  const to = like && referencesOf(view, block.section).findLast(({ at }) => isIn(at, like))?.to
  return to && holderOf(to, around)
}

/** The blocks that are like it. */
export function subtypes(view: View, block: Block, around: readonly FileAround[]): readonly Relative[] {
  return mentionsAround(view.analysis, { named: nameOf(block) }, around).flatMap(
    ({ at, defines, in: of }) => {
      if (defines) return []
      const node = [...blocksIn(at.section.parsed.tree.items)].findLast(({ span }) =>
        contains(span, at.span.start),
      )
      const other = node && blockOf(view.analysis.bound(of.file, at.section).blocks, node)
      const like = other && likeOf(other)
      // A path leads through other blocks: only its last segment is the one.
      return other && like && isIn(at, like) && at.span.end === like.span.end
        ? [{ block: other, in: of }]
        : []
    },
  )
}

function likeOf({ node, section }: Block): Place | undefined {
  const fact = node.items.find((item) => item.type === 'fact' && item.name.text === 'like')
  return fact?.type === 'fact' ? { section, span: fact.valueSpan } : undefined
}

const isIn = ({ span: a }: Place, { span: b }: Place): boolean => b.start <= a.start && a.end <= b.end
