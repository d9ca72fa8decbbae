import { mayConflict } from '../syntax/conflicts.ts'
import { once } from '../syntax/once.ts'
import { parseSection } from '../syntax/parser.ts'
import { cutSections } from '../syntax/sections.ts'
import type { Place, Section } from './model.ts'

/** A text as its sections. Editing keeps the sections it does not touch, and with them all that was worked out from them. */
export interface Document {
  readonly sections: readonly Section[]
  readonly length: number
}

export interface Position {
  readonly line: number
  /** UTF-16 units, as in LSP. */
  readonly character: number
}

const newSection = (text: string): Section => ({ text, parsed: parseSection(text) })

const document = (sections: readonly Section[]): Document => ({
  sections,
  length: sections.reduce((sum, section) => sum + section.text.length, 0),
})

export const openDocument = (text: string): Document => document(cutSections(text).map(newSection))

export const textOf = (doc: Document): string => doc.sections.map((section) => section.text).join('')

/** The document with the text from offset `from` to `to` replaced. Only sections at the edit are cut and read again. */
export function edit(doc: Document, from: number, to: number, text: string): Document {
  const { sections } = doc
  let first = 0
  let start = 0
  while (first < sections.length - 1 && start + length(sections, first) <= from)
    start += length(sections, first++)
  let last = first
  let end = start + length(sections, first)
  while (last < sections.length - 1 && end < to) end += length(sections, ++last)
  // Whether a section begins where it does depends on its neighbours: on how the one before it ends, and on the line after the edit.
  if (first > 0) start -= length(sections, --first)
  let merged = joined(sections, first, last)
  const edited = merged.slice(0, from - start) + text + merged.slice(to - start)
  if (mayConflict(merged) || mayConflict(edited)) {
    // A merge conflict is whole or none at all, however far its ends are apart.
    first = 0
    start = 0
    last = sections.length - 1
    merged = joined(sections, first, last)
  }
  merged = merged.slice(0, from - start) + text + merged.slice(to - start)
  let pieces = cutSections(merged)
  while (last < sections.length - 1) {
    const next = sections[last + 1]?.text ?? ''
    const withNext = cutSections(merged + next)
    const keepsBoundary = withNext.at(-1) === next && withNext.length === pieces.length + 1
    if (keepsBoundary) break
    last += 1
    merged += next
    pieces = withNext
  }
  const old = new Map(sections.slice(first, last + 1).map((section) => [section.text, section]))
  const fresh = pieces
    .filter((piece) => piece !== '' || sections.length === last - first + 1)
    .map((piece) => {
      const kept = old.get(piece)
      old.delete(piece) // the same text twice is two sections
      return kept ?? newSection(piece)
    })
  return document([...sections.slice(0, first), ...fresh, ...sections.slice(last + 1)])
}

const length = (sections: readonly Section[], i: number): number => sections[i]?.text.length ?? 0

const joined = (sections: readonly Section[], first: number, last: number): string =>
  sections
    .slice(first, last + 1)
    .map((section) => section.text)
    .join('')

/** Where each line of a section begins. */
const linesOf = once(({ text }: Section): readonly number[] => [
  0,
  ...[...text.matchAll(/\r\n|\n|\r/g)].map((match) => match.index + match[0].length),
])

interface Beginning {
  readonly line: number
  readonly offset: number
}

/** Where each section of a document begins. */
const layoutOf = once((doc: Document): ReadonlyMap<Section, Beginning> => {
  const entries = new Map<Section, Beginning>()
  let line = 0
  let offset = 0
  for (const section of doc.sections) {
    entries.set(section, { line, offset })
    line += linesOf(section).length - 1
    offset += section.text.length
  }
  return entries
})

/** Offset in the document at which a section begins; undefined where it is none of its sections. */
export const startOf = (doc: Document, section: Section): number | undefined =>
  layoutOf(doc).get(section)?.offset

export const hasSection = (doc: Document, section: Section): boolean => layoutOf(doc).has(section)

/** The line of an offset within a section, counted from its first. */
export function lineIn(section: Section, offset: number): number {
  const starts = linesOf(section)
  let low = 0
  let high = starts.length - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((starts[middle] ?? 0) <= offset) low = middle
    else high = middle - 1
  }
  return low
}

/** Line and character of an offset within a section, as the document stands now. */
export function positionOf(doc: Document, section: Section, offset: number): Position {
  const base = layoutOf(doc).get(section)?.line ?? 0
  const line = lineIn(section, offset)
  return { line: base + line, character: offset - (linesOf(section)[line] ?? 0) }
}

export const rangeOf = (doc: Document, place: Place): { start: Position; end: Position } => ({
  start: positionOf(doc, place.section, place.span.start),
  end: positionOf(doc, place.section, place.span.end),
})

/** The section a position falls in, with the offset in it. Positions beyond a line give its last place (LSP 3.17, Position), those beyond the
 * text its end. */
export function locate(
  doc: Document,
  position: Position,
): { readonly section: Section; readonly offset: number } | undefined {
  const layout = layoutOf(doc)
  let found: Section | undefined
  for (const section of doc.sections) {
    if ((layout.get(section)?.line ?? 0) > position.line) break
    if (section.text !== '' || !found) found = section
  }
  if (!found) return undefined
  const starts = linesOf(found)
  const line = position.line - (layout.get(found)?.line ?? 0)
  const start = starts[line]
  if (start === undefined) return { section: found, offset: found.text.length }
  const words = found.text.slice(start, starts[line + 1]).replace(/\r\n$|[\n\r]$/, '')
  return { section: found, offset: start + Math.min(position.character, words.length) }
}

/** Offset of a position in the whole text. */
export function offsetAt(doc: Document, position: Position): number {
  const at = locate(doc, position)
  return at ? (startOf(doc, at.section) ?? 0) + at.offset : 0
}
