import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import { mayConflict } from '../syntax/conflicts.ts'
import { parseSection } from '../syntax/parser.ts'
import { cutPieces, joinPieces, type Piece } from '../syntax/sections.ts'
import { soleBlock } from '../syntax/sole-block.ts'
import { largestFile, type Refusal, utf8Length, withoutMark } from './file-text.ts'
import type { Place, Section } from './model.ts'

/** A text as its sections. Editing keeps the sections it does not touch, and with them all that was worked out from them. */
export interface Document {
  readonly sections: readonly Section[]
  /** What the sections are joined from. */
  readonly pieces: readonly Piece[]
  readonly length: number
  /** Why the text is not read: then there is one section, without text. */
  readonly refusal?: Refusal
}

export interface Position {
  readonly line: number
  /** UTF-16 units, as in LSP. */
  readonly character: number
}

/** Parsed when its tree is first asked for: a question about many files asks for few. */
class SectionOf implements Section {
  readonly text: string
  #parsed: Section['parsed'] | undefined

  constructor(text: string) {
    this.text = text
  }

  get parsed(): Section['parsed'] {
    this.#parsed ??= parseSection(this.text)
    return this.#parsed
  }
}

/** The heading of a section that is one block and nothing else, where that can be told without its tree. */
export const soleBlockOf = memoizeByIdentity(({ text }: Section) => soleBlock(text))

/** The section that begins with a piece, where it was read already. */
const beginningWith = new WeakMap<Piece, Section>()

function sectionOf(pieces: readonly Piece[]): Section {
  const text = textFrom(pieces)
  const [first] = pieces
  const kept = first && beginningWith.get(first)
  if (kept?.text === text) return kept
  const section = new SectionOf(text)
  if (first) beginningWith.set(first, section)
  return section
}

const document = (pieces: readonly Piece[]): Document =>
  isTooLarge(pieces)
    ? refusedDocument({ type: 'file-too-large' }, textFrom(pieces))
    : { sections: joinPieces(pieces).map(sectionOf), pieces, length: lengthOf(pieces) }

const lengthOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, { text }) => sum + text.length, 0)

const bytesOf = memoizeByIdentity(({ text }: Piece): number => utf8Length(text))

/** A character takes three bytes at most, so that the bytes of a short text need not be counted. */
const isTooLarge = (pieces: readonly Piece[]): boolean =>
  lengthOf(pieces) * 3 > largestFile && pieces.reduce((sum, piece) => sum + bytesOf(piece), 0) > largestFile

/** A text that is not read. An editor may still change it. */
const refusedDocument = (refusal: Refusal, text = ''): Document => ({
  sections: [new SectionOf('')],
  pieces: [{ text, open: 0, rise: 0, lowest: 0 }],
  length: text.length,
  refusal,
})

/** Cutting a text that is far too long would take long itself. */
export const openDocument = (text: string): Document =>
  text.length > largestFile ? refusedDocument({ type: 'file-too-large' }, text) : document(cutPieces(text))

/** What was read of a file, without its byte order mark. */
export const documentFrom = (read: string | Refusal): Document =>
  typeof read === 'string' ? openDocument(withoutMark(read)) : refusedDocument(read)

export const textOf = (doc: Document): string => textFrom(doc.pieces)

/** The document with the text from offset `from` to `to` replaced. Only pieces at the edit are cut again, and only sections with one of them read. */
export function edit(doc: Document, from: number, to: number, text: string): Document {
  const { pieces } = doc
  if (doc.refusal || doc.length - (to - from) + text.length > largestFile) {
    const before = textOf(doc)
    return openDocument(before.slice(0, from) + text + before.slice(to))
  }
  let first = 0
  let start = 0
  while (first < pieces.length - 1 && start + length(pieces, first) <= from) start += length(pieces, first++)
  let last = first
  let end = start + length(pieces, first)
  while (last < pieces.length - 1 && end < to) end += length(pieces, ++last)
  // Whether a piece begins where it does depends on its neighbours: on how the one before it ends, and on the line after the edit.
  if (first > 0) start -= length(pieces, --first)
  let merged = textFrom(pieces.slice(first, last + 1))
  const edited = merged.slice(0, from - start) + text + merged.slice(to - start)
  if (mayConflict(merged) || mayConflict(edited)) {
    // A merge conflict is whole or none at all, however far its ends are apart.
    first = 0
    start = 0
    last = pieces.length - 1
    merged = textFrom(pieces)
  }
  merged = merged.slice(0, from - start) + text + merged.slice(to - start)
  let cut = cutPieces(merged)
  // Twice as many at each try, so that an edit that takes them all costs little more than cutting them once.
  for (let more = 1; last < pieces.length - 1; more *= 2) {
    const next = pieces.slice(last + 1, last + 1 + more)
    last += next.length
    merged += textFrom(next)
    cut = cutPieces(merged)
    // From a piece that begins and ends as before on, nothing is cut otherwise.
    if (cut.length > 1 && cut.at(-1)?.text === next.at(-1)?.text) break
  }
  const old = new Map(pieces.slice(first, last + 1).map((piece) => [piece.text, piece]))
  const fresh = cut
    .filter((piece) => piece.text !== '' || pieces.length === last - first + 1)
    .map((piece) => {
      const kept = old.get(piece.text)
      old.delete(piece.text) // the same text twice is two sections
      return kept ?? piece
    })
  return document([...pieces.slice(0, first), ...fresh, ...pieces.slice(last + 1)])
}

const length = (pieces: readonly Piece[], i: number): number => pieces[i]?.text.length ?? 0

const textFrom = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join('')

/** Where each line of a section begins. */
const linesOf = memoizeByIdentity(({ text }: Section): readonly number[] => {
  const starts = [0]
  const ends = /\r\n|\n|\r/g
  while (ends.test(text)) starts.push(ends.lastIndex)
  return starts
})

interface Beginning {
  readonly line: number
  readonly offset: number
}

/** Where each section of a document begins. */
const layoutOf = memoizeByIdentity((doc: Document): ReadonlyMap<Section, Beginning> => {
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

/** The line of the document on which a section begins. */
export const firstLineOf = (doc: Document, section: Section): number => layoutOf(doc).get(section)?.line ?? 0

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
  const line = lineIn(section, offset)
  return { line: firstLineOf(doc, section) + line, character: offset - (linesOf(section)[line] ?? 0) }
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
  if (doc.refusal) return offsetIn(textOf(doc), position)
  const at = locate(doc, position)
  return at ? (startOf(doc, at.section) ?? 0) + at.offset : 0
}

/** The same in a text that is not cut into sections, line by line: a list of all its lines might be too long. */
function offsetIn(text: string, { line, character }: Position): number {
  let start = 0
  for (let n = 0; n < line; n++) {
    const end = lineEnd(text, start)
    if (end === text.length) return end
    start = end + (text.startsWith('\r\n', end) ? 2 : 1)
  }
  return Math.min(start + character, lineEnd(text, start))
}

function lineEnd(text: string, from: number): number {
  let at = from
  while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at += 1
  return at
}
