import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { Section } from '../job/model.ts'
import { formatText } from '../syntax/format.ts'
import type { Edit } from './fix.ts'
import { blank } from './fix-text.ts'

/** New text for a part of a section, blanks still in it. */
export interface Rewritten extends Edit {
  readonly hasBlanks: boolean
}

/** Edits made one a section, in the formatter's layout where the section had it before. Of edits that overlap the first counts.
 * `blanks`: whether they stay in the text, for an editor that goes from one to the next. */
export function layOut(
  edits: readonly Edit[],
  { blanks }: { readonly blanks: boolean },
): readonly Rewritten[] {
  const bySection = new Map<Section, Edit[]>()
  for (const edit of edits) {
    const own = bySection.get(edit.at.section)
    if (own) own.push(edit)
    else bySection.set(edit.at.section, [edit])
  }
  return [...bySection].flatMap(([section, own]) => {
    const before = section.text
    const end = before.includes('\r\n') ? '\r\n' : '\n'
    const made = applied(before, own)
    const raw = (blanks ? made : withoutBlanks(made)).replaceAll(/\r\n|\n/g, end)
    const after = isLaidOut(section) ? laidOut(raw) : raw
    return before === after ? [] : [difference(section, after)]
  })
}

/** Edits that do not overlap, the earliest first. */
function apart(edits: readonly Edit[]): readonly Edit[] {
  const kept: Edit[] = []
  for (const edit of edits.toSorted((a, b) => a.at.span.start - b.at.span.start)) {
    const last = kept.at(-1)
    if (!last || last.at.span.end <= edit.at.span.start) kept.push(edit)
  }
  return kept
}

function applied(text: string, edits: readonly Edit[]): string {
  let made = ''
  let from = 0
  for (const { at, newText } of apart(edits)) {
    made += text.slice(from, at.span.start) + newText
    from = at.span.end
  }
  return made + text.slice(from)
}

/** Whether a section stands in the formatter's layout. */
const isLaidOut = memoizeByIdentity(({ text }: Section): boolean => laidOut(text) === text)

/** A section in the formatter's layout, with the blank lines round it as they are. */
function laidOut(text: string): string {
  const lead = /^(?:[ \t]*(?:\r\n|\n))*/.exec(text)?.[0] ?? ''
  const core = text.slice(lead.length).trimEnd()
  const tail = text.slice(lead.length + core.length)
  return core === '' ? '' : lead + formatText(core).trimEnd() + tail
}

function difference(section: Section, after: string): Rewritten {
  const before = section.text
  const most = Math.min(before.length, after.length)
  let same = 0
  while (same < most && before[same] === after[same]) same += 1
  let end = 0
  while (end < most - same && before.at(-1 - end) === after.at(-1 - end)) end += 1
  const hasBlanks = after.includes(blank)
  // From the start of a line: an editor indents the lines of a snippet like the text before it.
  const start = hasBlanks ? before.lastIndexOf('\n', same - 1) + 1 : same
  return {
    at: { section, span: { start, end: before.length - end } },
    newText: after.slice(start, after.length - end),
    hasBlanks,
  }
}

/** A blank with the quotes round it. */
const filled = new RegExp(`"?${blank}"?`, 'g')

/** For an editor that takes text alone: what is to be written is not known yet. */
const withoutBlanks = (text: string): string => text.replaceAll(filled, '?')

/** For an editor that goes from blank to blank (LSP 3.18, StringValue). */
export function asSnippet(text: string): string {
  let stop = 0
  const escaped = text.replaceAll(/[\\$}]/g, '\\$&')
  return escaped.replaceAll(filled, (place) => (place === blank ? `\${${++stop}:?}` : `"$${++stop}"`))
}
