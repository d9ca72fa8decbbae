import type { Span } from './tree.ts'

/** What a merge leaves where two people changed the same lines: two versions between lines of seven signs, and between them sometimes what
 * both began from. The first version is read; the rest is passed over, so that braces and names of one version never meet those of another. */
export interface Conflict {
  readonly span: Span
  /** The line that opens it. */
  readonly opening: Span
  /** All of it but the first version. */
  readonly passed: readonly Span[]
}

// Git's own marks (git-merge, "How conflicts are presented"): seven signs at the margin, then a space and words or nothing.
const mark = /^(?:<{7}|\|{7}|={7}|>{7})/m
const lines = /([^\r\n]*)(\r\n|[\r\n]|$)/g

/** Whether a line of the text may open, part or close a conflict. */
export const mayConflict = (text: string): boolean => mark.test(text)

type Sign = '<' | '|' | '=' | '>'

/** The sign of a line of marks; undefined of any other line. */
function signOf(line: string): Sign | undefined {
  const sign = line[0]
  if (sign !== '<' && sign !== '|' && sign !== '=' && sign !== '>') return undefined
  return line.startsWith(sign.repeat(7)) ? sign : undefined
}

/** Whether a line that begins with a mark is one. */
const isMark = (line: string): boolean => line.length === 7 || line[7] === ' '

/** A conflict that has been opened and not closed yet. */
interface OpenConflict {
  readonly opening: Span
  /** Where the first version ends. */
  firstEnd: number | undefined
  /** What is read now. */
  part: 'first' | 'base' | 'second'
}

/** Read line by line: were a missing end looked for from each beginning, many of them would take for ever. */
export function conflictsIn(text: string): readonly Conflict[] {
  if (!text.includes('<<<<<<<')) return []
  const found: Conflict[] = []
  let opened: OpenConflict | undefined
  for (const { 1: line = '', 2: end = '', index } of text.matchAll(lines)) {
    const sign = signOf(line)
    if (!sign) continue
    const behind = index + line.length
    if (sign === '<') {
      const opening = { start: index, end: behind + end.length }
      opened = isMark(line) && end !== '' ? { opening, firstEnd: undefined, part: 'first' } : undefined
      continue
    }
    if (!opened) continue
    const { opening, part } = opened
    if (sign === '|' && part !== 'first') continue
    if (sign === '|' && isMark(line)) {
      opened.firstEnd = index
      opened.part = 'base'
    } else if (sign === '=' && part !== 'second' && line.length === 7) {
      opened.firstEnd ??= index
      opened.part = 'second'
    } else {
      if (sign === '>' && part === 'second' && isMark(line) && opened.firstEnd !== undefined) {
        const span = { start: opening.start, end: behind }
        found.push({ span, opening, passed: [opening, { start: opened.firstEnd, end: behind }] })
      }
      opened = undefined
    }
  }
  return found
}

/** The text with spaces for all that is passed over: every other character stays where it is. */
export function asRead(text: string, conflicts: readonly Conflict[]): string {
  let read = ''
  for (const { start, end } of conflicts.flatMap(({ passed }) => passed)) {
    read += text.slice(read.length, start)
    read += text.slice(start, end).replace(/[^\r\n]/g, ' ')
  }
  return read + text.slice(read.length)
}
