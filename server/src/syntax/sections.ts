import { asRead, conflictsIn } from './conflicts.ts'
import { alwaysInside, insideWithoutName } from './inside.ts'

/** Cuts a text into sections: a top-level block with the blank lines and comments before it.
 *
 * Line by line, so that a keystroke needs only the sections it touches cut again. A block ends where its braces close. When one is
 * never closed, it still ends before a line that opens a block at the left margin, provided its own lines are indented: a half-typed
 * block costs itself, not the rest of the file. Only a block whose place is inside another is taken to be inside, as when a reading is
 * pasted at the margin. A merge conflict is not cut. */
export function cutSections(text: string): string[] {
  const conflicts = conflictsIn(text)
  const read = asRead(text, conflicts)
  let next = 0
  const sections: string[] = []
  let from = 0
  const scan = newScan()
  for (let at = 0; at < text.length; ) {
    const end = lineEnd(text, at)
    while ((conflicts[next]?.span.end ?? text.length) < at) next += 1
    const opens = conflicts[next]?.span.start === at
    const inside = !opens && (conflicts[next]?.span.start ?? text.length) < at
    if (opens ? scan.begun && scan.depth === 0 : !inside && startsSection(scan, read, at, end)) {
      const cut = scan.trivia ?? at
      if (cut > from) {
        sections.push(text.slice(from, cut))
        from = cut
      }
      reset(scan)
    }
    step(scan, read, at, end)
    // What stands before the next block does not begin within a conflict.
    if (inside) scan.trivia = undefined
    at = end
  }
  if (from < text.length || sections.length === 0) sections.push(text.slice(from))
  return sections
}

interface Scan {
  depth: number
  /** Whether an item has begun in this section. */
  begun: boolean
  /** Whether the block's own lines are indented; undefined before its first. */
  indented: boolean | undefined
  /** Where the run of blank and comment lines just before this line starts. */
  trivia: number | undefined
}

const newScan = (): Scan => ({ depth: 0, begun: false, indented: undefined, trivia: undefined })

function reset(scan: Scan): void {
  scan.depth = 0
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

const headerAtMargin = /^([^\W\d][^\s{}"#:,[\]]*)((?:[ \t]+(?:"[^"]*"|[^\s{}"#:,[\]]+))*)[ \t]*\{/

function startsSection(scan: Scan, text: string, at: number, end: number): boolean {
  if (!scan.begun) return false
  const c = text.charCodeAt(at)
  const blank = c === 10 || c === 13 || c === 35 || c === 32 || c === 9 || c === 125
  if (blank) return false
  if (scan.depth === 0) return true
  if (scan.indented !== true) return false
  const [, kind, heading] = headerAtMargin.exec(text.slice(at, Math.min(end, at + 400))) ?? []
  return kind !== undefined && !alwaysInside.has(kind) && !(heading === '' && insideWithoutName.has(kind))
}

function step(scan: Scan, text: string, at: number, end: number): void {
  let content = false
  let text_ = false
  let i = at
  for (; i < end; i++) {
    const c = text.charCodeAt(i)
    if (text_) {
      if (c === 92) i++
      else if (c === 34) text_ = false
    } else if (c === 35) {
      break
    } else if (c === 34) {
      text_ = true
      content = true
    } else if (c === 123) {
      scan.depth += 1
      content = true
    } else if (c === 125) {
      scan.depth = Math.max(0, scan.depth - 1)
      content = true
    } else if (c > 32 && c !== 0xfeff) content = true
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
