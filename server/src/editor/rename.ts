import type { Analysis } from '../job/analysis.ts'
import { hasSection } from '../job/document.ts'
import type { Block, Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import { isName } from '../syntax/segments.ts'
import type { Span } from '../syntax/tree.ts'
import { findKind } from '../vocabulary/index.ts'
import type { FileAround } from './around.ts'
import { nodeAt } from './node-at.ts'
import { type FoundMention, mentionsAround } from './references.ts'
import { triedOut } from './rename-trial.ts'
import { type Target, targetAt } from './target.ts'

/** Why something cannot be given another name, for people. */
export interface Refused {
  readonly refused: string
}

export interface Renamable {
  readonly target: Target
  readonly name: string
  /** The name without its quotes. */
  readonly span: Span
}

const refused = (words: string): Refused => ({ refused: words })

/** The name at an offset that can be another one. */
export function renamable(view: View, section: Section, offset: number): Renamable | Refused {
  const target = targetAt(view, section, offset)
  if (!target || target.is === 'fact') return refused(fixed(section, offset))
  const name = target.is === 'mark' ? written(target.named.section, target.named.span) : target.block.name
  if (name === undefined)
    return refused(`This ${target.block.kind} has no name: it goes by its kind, a word of the language.`)
  const here = written(section, target.span)
  if (here !== name)
    return refused(`${here} stands for its kind here. Its name is ${name}: rename it where that is written.`)
  if (!isName(name)) return refused(`${name} is not one word: write it anew where it stands.`)
  return { target, name, span: bare(section, target.span) }
}

/** Where the new name has to be written, in each file; or why it cannot be this one. */
export function rename(
  view: View,
  { section, offset }: { readonly section: Section; readonly offset: number },
  { to, around }: { readonly to: string; readonly around: readonly FileAround[] },
): readonly FoundMention[] | Refused {
  const from = renamable(view, section, offset)
  if ('refused' in from) return from
  const unfit = unfitName(from, to, topOf(view.analysis, from.target, around))
  if (unfit !== undefined) return refused(unfit)
  const mentions = mentionsAround(view.analysis, from.target, around).flatMap((mention) => {
    const { section: at, span } = mention.at
    return written(at, span) === from.name ? [{ ...mention, at: { section: at, span: bare(at, span) } }] : []
  })
  if (to === from.name) return []
  const other = triedOut(view.analysis, { mentions, to, around })
  return other === undefined ? mentions : refused(other)
}

/** A name is one word without dots, none of the language's own, and not taken beside it. */
function unfitName({ target, name }: Renamable, to: string, top: readonly Block[]): string | undefined {
  if (!isName(to))
    return `${JSON.stringify(to)} is no name: a name is one word that begins with a letter, without dots.`
  if (to === name) return undefined
  const { block, is } = target
  if (is === 'mark') {
    const taken = marksOf(target).includes(to)
    return taken ? `The ${block.kind} has a terminal ${to} already.` : undefined
  }
  if (findKind(to))
    return `${to} is a word of the language: a block by that name could not be told from its kind.`
  const move = block.kind === 'foot' ? findKind('move') : undefined
  if (move && (to === 'like' || Object.hasOwn(move.facts, to)))
    return `${to} means something else in a move: a foot by that name could not be moved there.`
  const beside = block.parent?.children ?? top
  const taken = beside.find((other) => other.name === to)
  return taken && `There is a ${taken.kind} ${to} already.`
}

/** Top-level blocks of the file that the target stands in. */
function topOf(analysis: Analysis, { named }: Target, around: readonly FileAround[]): readonly Block[] {
  const holder = around.find(({ file }) => hasSection(file.document, named.section))
  return holder ? analysis.blocks(holder.file) : []
}

const marksOf = ({ block }: Target): readonly string[] => {
  const marks = block.facts.get('terminals')?.value
  return Array.isArray(marks) ? marks.map(({ name }: { readonly name: string }) => name) : []
}

function bare({ text }: Section, { start, end }: Span): Span {
  return text[start] === '"' ? { start: start + 1, end: end - 1 } : { start, end }
}

function written(section: Section, span: Span): string {
  const { start, end } = bare(section, span)
  return section.text.slice(start, end)
}

/** Why what stands at an offset stays as it is. */
function fixed(section: Section, offset: number): string {
  const at = nodeAt(section.parsed.tree, offset)
  switch (at?.on) {
    case 'kind':
      return `${at.block.kind.text} is a word of the language.`
    case 'fact':
      return `${at.fact.name.text} is a word of the language.`
    case 'unit':
      return `${at.unit.text} is a unit.`
    case 'part':
      return 'text' in at.part
        ? `${at.part.text} is not the name of anything in the job.`
        : 'There is no name here.'
    default:
      return 'There is no name here.'
  }
}
