import { hasSection } from '../../job/document.ts'
import { type Block, blockOf, headingOf, nameOf, type Place, type Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { referencesOf } from '../../job/references.ts'
import { unquoted } from '../../syntax/leaves.ts'
import { contains, type Span } from '../../syntax/tree.ts'
import { findKind } from '../../vocabulary/index.ts'
import { mayMention } from './may-mention.ts'
import { nodeAt } from './node-at.ts'

/** What a word stands for: a block, a fact of one, or a word in a fact (the mark of a terminal). */
export interface Target {
  /** The word itself. */
  readonly span: Span
  /** The word that gives what it stands for its name. Targets are the same where these are. */
  readonly named: Place
  readonly block: Block
  readonly is: 'block' | 'fact' | 'mark'
}

export const isSamePlace = (a: Place, b: Place): boolean =>
  a.section === b.section && a.span.start === b.span.start

/** What the word at an offset stands for, where it is used or where it is defined. */
export function targetAt(view: View, section: Section, offset: number): Target | undefined {
  const reference = referencesOf(view, section).find(({ at }) => contains(at.span, offset))
  if (reference) {
    const { at, to, fact, word, named } = reference
    const is = fact === undefined ? 'block' : word === undefined ? 'fact' : 'mark'
    return { span: at.span, named, block: to, is }
  }
  const at = nodeAt(section.parsed.tree, offset)
  const node = at?.blocks.at(-1)
  const block = node && blockOf(view.analysis.bound(view.file, section).blocks, node)
  if (!block) return undefined
  const here = (span: Span, is: Target['is']): Target => ({ span, named: { section, span }, block, is })
  switch (at?.on) {
    case 'kind':
    case 'heading': {
      const { span } = headingOf(block)
      return contains(span, offset) ? { ...here(span, 'block'), named: nameOf(block) } : undefined
    }
    case 'fact':
      return Object.hasOwn(findKind(block.kind)?.facts ?? {}, at.fact.name.text)
        ? here(at.fact.name.span, 'fact')
        : undefined
    case 'part': {
      const isMark = at.item.type === 'fact' && at.item.name.text === 'terminals' && 'text' in at.part
      return isMark ? here(at.part.span, 'mark') : undefined
    }
    default:
      return undefined
  }
}

/** A place with whether it is where the thing gets its name. */
export interface Mention {
  readonly at: Place
  readonly defines: boolean
}

/** What a text has to have somewhere for a word in another file to stand for the target: its name. A block inside of another may also go by
 * its kind. */
export function wordsFor({ named, block, is }: Pick<Target, 'named' | 'block' | 'is'>): readonly string[] {
  const written = named.section.text.slice(named.span.start, named.span.end)
  const kind = is === 'block' && block.parent ? [block.kind] : []
  return [written, unquoted(written), ...(is === 'block' ? [block.name ?? ''] : []), ...kind]
}

/** Every word of a file that stands for the target, in the order of the text. */
export function mentionsIn(view: View, target: Pick<Target, 'named' | 'block' | 'is'>): readonly Mention[] {
  const { named, block } = target
  const inDocument = hasSection(view.file.document, named.section)
  // The only block of its kind also goes by that in its own file.
  const words = inDocument ? [...wordsFor(target), block.kind] : wordsFor(target)
  return view.file.document.sections.flatMap((section) => {
    if (section !== named.section && !mayMention(section.text, words)) return []
    const uses = referencesOf(view, section)
      .filter((reference) => isSamePlace(reference.named, named))
      .map(({ at }) => ({ at, defines: false }))
    if (section !== named.section) return uses
    return [...uses, { at: named, defines: true }].sort((a, b) => a.at.span.start - b.at.span.start)
  })
}
