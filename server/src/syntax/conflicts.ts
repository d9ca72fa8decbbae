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
// A line ends in one way only: were CR LF also CR and an empty line, looking for an end that is missing would take for ever.
const whole =
  /^<{7}(?: [^\r\n]*)?(?:\r?\n|\r(?!\n))((?:(?!<{7}|\|{7}|={7}|>{7})[^\r\n]*(?:\r?\n|\r(?!\n)))*)((?:\|{7}(?: [^\r\n]*)?(?:\r?\n|\r(?!\n))(?:(?!<{7}|={7}|>{7})[^\r\n]*(?:\r?\n|\r(?!\n)))*)?={7}(?:\r?\n|\r(?!\n))(?:(?!<{7}|={7}|>{7})[^\r\n]*(?:\r?\n|\r(?!\n)))*>{7}(?: [^\r\n]*)?$)/gm
const line = /^(?:<{7}|\|{7}|={7}|>{7})/m

/** Whether a line of the text may open, part or close a conflict. */
export const mayConflict = (text: string): boolean => line.test(text)

export function conflictsIn(text: string): readonly Conflict[] {
  if (!text.includes('<<<<<<<')) return []
  return [...text.matchAll(whole)].map(({ 0: all, 1: first = '', 2: rest = '', index }) => {
    const end = index + all.length
    const from = end - rest.length
    const opening = { start: index, end: from - first.length }
    return { span: { start: index, end }, opening, passed: [opening, { start: from, end }] }
  })
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
