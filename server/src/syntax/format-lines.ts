import { conflictsIn } from './conflicts.ts'
import { indentsOf, laidOut, linesOf } from './format.ts'
import { cutSections } from './sections.ts'
import type { Span } from './tree.ts'

interface Cut {
  readonly text: string
}

/** White space changed within one line of a section. */
export interface LineEdit<S extends Cut> {
  readonly section: S
  readonly span: Span
  readonly newText: string
}

/** Lays out the lines of neighbouring sections that a span touches, as the whole would be laid out: `from` in the first of them, `to` in the
 * last. Lines stay lines, blank ones too. `before` and `next` are the
 * sections around them. Nothing where the layout would be read otherwise. */
export function formatLines<S extends Cut>(
  sections: readonly S[],
  {
    from,
    to,
    before,
    next,
  }: {
    readonly from: number
    readonly to: number
    readonly before: S | undefined
    readonly next: S | undefined
  },
): readonly LineEdit<S>[] {
  if (!sections.every((section) => laidOut(section).rests)) return []
  const edits = sections.flatMap((section, i) => {
    const { lines } = laidOut(section)
    const [first, last] = [i === 0 ? from : 0, i === sections.length - 1 ? to : section.text.length]
    return spansOf(section.text).flatMap((span, at): LineEdit<S>[] => {
      const newText = lines[at] ?? ''
      // A selection that ends where a line begins does not reach into it.
      const touched = span.end >= first && (span.start < last || span.start <= first)
      // Between a lone carriage return and a line feed an emptied line would make one line end of both.
      const joins = newText === '' && section.text[span.start - 1] === '\r' && section.text[span.end] === '\n'
      return touched && !joins && section.text.slice(span.start, span.end) !== newText
        ? [{ section, span, newText }]
        : []
    })
  })
  const around = [...(before ? [before] : []), ...sections, ...(next ? [next] : [])]
  const after = around.map((section) => applied(section, edits)).join('')
  const same =
    cutSections(after).map(withoutWhitespace).filter(Boolean).join('\n') ===
    around
      .map(({ text }) => withoutWhitespace(text))
      .filter(Boolean)
      .join('\n')
  return same ? edits : []
}

const withoutWhitespace = (text: string): string => text.replace(/[\s\uFEFF]/g, '')

function applied<S extends Cut>(section: S, edits: readonly LineEdit<S>[]): string {
  let text = ''
  let end = 0
  for (const { span, newText } of edits.filter((edit) => edit.section === section)) {
    text += section.text.slice(end, span.start) + newText
    end = span.end
  }
  return text + section.text.slice(end)
}

/** Where the lines stand, without their line ends. */
function spansOf(section: string): readonly Span[] {
  let from = 0
  return linesOf(section).map((line) => {
    const span = { start: from, end: from + line.length }
    from = span.end + (section.startsWith('\r\n', span.end) ? 2 : 1)
    return span
  })
}

/** Puts the line that an offset is in as far in as the whole layout would; what stands on it stays. `before` is the section in front. */
export function indentLine<S extends Cut>(
  section: S,
  offset: number,
  before: S | undefined,
): readonly LineEdit<S>[] {
  const { text } = section
  if (conflictsIn(text).length > 0) return []
  const lines = spansOf(text)
  const found = lines.findIndex(({ end }) => offset <= end)
  const at = found < 0 ? lines.length : found
  const { start, end } = lines[at] ?? { start: text.length, end: text.length }
  const white = /^[ \t]*/.exec(text.slice(start, end))?.[0] ?? ''
  // Blank lines in front of a block may still belong to the one above, where that is open.
  const leading = lines.slice(0, at + 1).every((line) => /^\s*(?:#|$)/.test(text.slice(line.start, line.end)))
  const newText = leading && before ? indentsOf(before.text).at(-1) : indentsOf(text)[at]
  if (newText === undefined || newText === white) return []
  return [{ section, span: { start, end: start + white.length }, newText }]
}
