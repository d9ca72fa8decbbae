import { asRead, conflictsIn } from './conflicts.ts'
import { alwaysInside, insideWithoutName } from './inside.ts'
import { sources } from './tokens.ts'

/** A text from one place where it may be cut to the next, with its braces counted. */
export interface Piece {
  readonly text: string
  /** Blocks left open at its end. */
  readonly open: number
  /** Opening braces less closing ones: in all, and at least. */
  readonly rise: number
  readonly lowest: number
}

/** Cuts a text into sections: a top-level block with the blank lines and comments before it. */
export const cutSections = (text: string): string[] =>
  joinPieces(cutPieces(text)).map((pieces) => pieces.map((piece) => piece.text).join(''))

/** Cuts a text line by line, so that a keystroke needs only the pieces it touches cut again.
 *
 * A block ends where its braces close. When one is not closed, it may still end before a line that opens a block or names a library at the
 * left margin, provided its own lines are indented: a half-typed block costs itself, not the rest of the file. Only a block whose place is
 * inside another is taken to be inside, as when a reading is pasted at the margin. A merge conflict is not cut. */
export function cutPieces(text: string): Piece[] {
  const conflicts = conflictsIn(text)
  const read = asRead(text, conflicts)
  let next = 0
  const pieces: Piece[] = []
  let from = 0
  const scan = newScan()
  const end = (to: number) => {
    const { depth, rise, lowest } = scan
    pieces.push({ text: text.slice(from, to), open: depth, rise, lowest })
    from = to
  }
  for (let at = 0; at < text.length; ) {
    const line = lineEnd(text, at)
    while ((conflicts[next]?.span.end ?? text.length) < at) next += 1
    const opens = conflicts[next]?.span.start === at
    const inside = !opens && (conflicts[next]?.span.start ?? text.length) < at
    if (opens ? scan.begun && scan.depth === 0 : !inside && startsSection(scan, read, at, line)) {
      const cut = scan.trivia ?? at
      if (cut > from) end(cut)
      reset(scan)
    }
    step(scan, read, at, line)
    // What stands before the next block does not begin within a conflict.
    if (inside) scan.trivia = undefined
    at = line
  }
  if (from < text.length || pieces.length === 0) end(text.length)
  return pieces
}

/** The pieces of each section. A block that is left open goes on as far as its own braces do: it ends early only where nothing closes it. */
export function joinPieces(pieces: readonly Piece[]): (readonly Piece[])[] {
  const before = [0]
  for (const { rise } of pieces) before.push((before.at(-1) ?? 0) + rise)
  const lowestOf = (i: number) => (before[i] ?? 0) + (pieces[i]?.lowest ?? 0)
  const lowestFrom: number[] = []
  for (let i = pieces.length - 1; i >= 0; i--)
    lowestFrom[i] = Math.min(lowestOf(i), lowestFrom[i + 1] ?? Number.POSITIVE_INFINITY)
  const sections: (readonly Piece[])[] = []
  for (let i = 0; i < pieces.length; ) {
    let end = i + 1
    for (let open = pieces[i]?.open ?? 0; open > 0; open = pieces[end - 1]?.open ?? 0) {
      const closed = (before[end] ?? 0) - open
      if ((lowestFrom[end] ?? Number.POSITIVE_INFINITY) > closed) break
      while (lowestOf(end) > closed) end += 1
      end += 1
    }
    sections.push(pieces.slice(i, end))
    i = end
  }
  return sections
}

interface Scan {
  depth: number
  /** The depth where closing braces without a block count too, at the end and at least. */
  rise: number
  lowest: number
  /** Whether an item has begun in this section. */
  begun: boolean
  /** Whether the block's own lines are indented; undefined before its first. */
  indented: boolean | undefined
  /** Where the run of blank and comment lines just before this line starts. */
  trivia: number | undefined
}

const newScan = (): Scan => ({
  depth: 0,
  rise: 0,
  lowest: 0,
  begun: false,
  indented: undefined,
  trivia: undefined,
})

function reset(scan: Scan): void {
  scan.depth = 0
  scan.rise = 0
  scan.lowest = 0
  scan.begun = false
  scan.indented = undefined
}

function lineEnd(text: string, at: number): number {
  for (let i = at; i < text.length; i++) {
    const c = text.charCodeAt(i)
    if (c === 10) return i + 1
    if (c === 13) return text.charCodeAt(i + 1) === 10 ? i + 2 : i + 1
  }
  return text.length
}

const headerAtMargin =
  /^([^\W\d][^\s{}"#:,[\]]*)((?:[ \t]+(?:"[^"]*"|"[^"{}#]*(?=\{)|[^\s{}"#:,[\]]+))*)[ \t]*\{/

function startsSection(scan: Scan, text: string, at: number, end: number): boolean {
  if (!scan.begun) return false
  const c = text.charCodeAt(at)
  const blank = c === 10 || c === 13 || c === 35 || c === 32 || c === 9 || c === 125
  if (blank) return false
  if (scan.depth === 0) return true
  if (scan.indented !== true) return false
  const line = text.slice(at, Math.min(end, at + 400))
  if (/^use[ \t]+"/.test(line)) return true
  const [, kind, heading] = headerAtMargin.exec(line) ?? []
  return kind !== undefined && !alwaysInside.has(kind) && !(heading === '' && insideWithoutName.has(kind))
}

const texts = new RegExp(`${sources.text}|${sources.openText}`, 'y')

/** Where a text ends, closed or not. */
function textEnd(text: string, at: number): number {
  texts.lastIndex = at
  return texts.test(text) ? texts.lastIndex : at + 1
}

function step(scan: Scan, text: string, at: number, end: number): void {
  let content = false
  for (let i = at; i < end; i++) {
    const c = text.charCodeAt(i)
    if (c === 35) break
    if (c === 34) i = textEnd(text, i) - 1
    else if (c === 92 && text.charCodeAt(i + 1) === 34) i++
    else if (c === 123) {
      scan.depth += 1
      scan.rise += 1
    } else if (c === 125) {
      scan.depth = Math.max(0, scan.depth - 1)
      scan.rise -= 1
      scan.lowest = Math.min(scan.lowest, scan.rise)
    }
    if (c > 32 && c !== 0xfeff) content = true
  }
  if (!content) {
    scan.trivia ??= at
    return
  }
  scan.trivia = undefined
  const first = text.charCodeAt(at)
  if (scan.begun && scan.indented === undefined && first !== 125) scan.indented = first === 32 || first === 9
  scan.begun = true
}
