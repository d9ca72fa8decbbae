import { keyOf } from '../../host/uri.ts'
import { rangeOf, startOf } from '../../job/document.ts'
import type { Block, Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { isName } from '../../syntax/segments.ts'
import type { Span } from '../../syntax/tree.ts'
import { findKind } from '../../vocabulary/index.ts'
import type { FilesAround } from '../navigation/around.ts'
import { nodeAt } from '../navigation/node-at.ts'
import { mentionsAround } from '../navigation/references.ts'
import { type Target, targetAt } from '../navigation/target.ts'
import type { Range } from '../workspace/workspace.ts'
import { triedOut, type Written } from './rename-trial.ts'

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
    return refused(`This ${target.block.kind} has no name of its own: its kind is a word of the language.`)
  const here = written(section, target.span)
  if (here !== name)
    return refused(
      `${here} is a kind here, not a name. The name of this block is ${name}: rename it where that name is written.`,
    )
  if (!isName(name))
    return refused(`${name} is more than one word, so it cannot be renamed here. Change it by hand.`)
  return { target, name, span: bare(section, target.span) }
}

/** A place where the new name has to be written. */
export interface Rewritten {
  readonly uri: string
  readonly range: Range
}

/** Where the new name has to be written, in each file; or why it cannot be this one. */
export async function rename(
  view: View,
  { section, offset }: { readonly section: Section; readonly offset: number },
  { to, around }: { readonly to: string; readonly around: FilesAround },
): Promise<readonly Rewritten[] | Refused> {
  const from = renamable(view, section, offset)
  if ('refused' in from) return from
  const unfit = unfitName(from, to, topOf(from.target, around))
  if (unfit !== undefined) return refused(unfit)
  if (to === from.name) return []
  const rewritten: Rewritten[] = []
  /** By the key of the file. */
  const changes = new Map<string, Written[]>()
  for await (const { at, in: of } of mentionsAround(from.target, around)) {
    if (written(at.section, at.span) !== from.name) continue
    const { document } = of.file
    const span = bare(at.section, at.span)
    rewritten.push({ uri: of.uri, range: rangeOf(document, { section: at.section, span }) })
    const start = startOf(document, at.section) ?? 0
    const list = changes.get(keyOf(of.uri)) ?? []
    if (list.length === 0) changes.set(keyOf(of.uri), list)
    list.push({ from: start + span.start, to: start + span.end })
  }
  const other = await triedOut({ changes, from: from.name, to, around })
  return other === undefined ? rewritten : refused(other)
}

/** A name is one word without dots, none of the language's own, and not taken beside it. */
function unfitName({ target, name }: Renamable, to: string, top: readonly Block[]): string | undefined {
  if (!isName(to))
    return `${JSON.stringify(to)} is not a name. A name is one word that begins with a letter and has no dots.`
  if (to === name) return undefined
  const { block, is } = target
  if (is === 'mark') {
    const taken = marksOf(target).includes(to)
    return taken ? `The ${block.kind} already has a terminal ${to}.` : undefined
  }
  if (findKind(to)) return `${to} is a word of the language, so it cannot be the name of a block.`
  const move = block.kind === 'foot' ? findKind('move') : undefined
  if (move && (to === 'like' || Object.hasOwn(move.facts, to)))
    return `${to} means something else in a move, so it cannot be the name of a foot.`
  const beside = block.parent?.children ?? top
  const taken = beside.find((other) => other.name === to)
  return taken && `There is already a ${taken.kind} ${to}.`
}

/** Top-level blocks of the file that the target stands in. */
function topOf({ named }: Target, around: FilesAround): readonly Block[] {
  const holder = around.holderOf(named.section)
  return holder ? around.analysis.blocks(holder.file) : []
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
