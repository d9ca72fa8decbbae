import type { Block, Place, Section } from '../../job/model.ts'
import { blockOf, nameOf, writtenBlock } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { referencesOf } from '../../job/references.ts'
import { blocksIn, contains } from '../../syntax/tree.ts'
import type { FileAround, FilesAround } from './around.ts'
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
  around: FilesAround,
): Relative | undefined {
  const target = targetAt(view, section, offset)
  return target?.is === 'block' ? holderOf(writtenBlock(target.block), around) : undefined
}

function holderOf(block: Block, around: FilesAround): Relative | undefined {
  const holder = around.holderOf(block.section)
  return holder && { block, in: holder }
}

/** The block it is like. */
export function supertype(view: View, block: Block, around: FilesAround): Relative | undefined {
  const like = likeOf(block)
  const to = like && referencesOf(view, block.section).findLast(({ at }) => isIn(at, like))?.to
  return to && holderOf(writtenBlock(to), around)
}

/** The blocks that are like it. */
export async function* subtypes(block: Block, around: FilesAround): AsyncGenerator<Relative> {
  const target = { named: nameOf(block), block, is: 'block' } as const
  for await (const { at, defines, in: of } of mentionsAround(target, around)) {
    if (defines) continue
    const node = [...blocksIn(at.section.parsed.tree.items)].findLast(({ span }) =>
      contains(span, at.span.start),
    )
    const other = node && blockOf(around.analysis.bound(of.file, at.section).blocks, node)
    const like = other && likeOf(other)
    // A path leads through other blocks: only its last segment is the one.
    if (other && like && isIn(at, like) && at.span.end === like.span.end) yield { block: other, in: of }
  }
}

function likeOf({ node, section }: Block): Place | undefined {
  const fact = node.items.find((item) => item.type === 'fact' && item.name.text === 'like')
  return fact?.type === 'fact' ? { section, span: fact.valueSpan } : undefined
}

const isIn = ({ span: a }: Place, { span: b }: Place): boolean => b.start <= a.start && a.end <= b.end
