import { type Check, type Finding, fullMessage } from '../../server/src/checks/check.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import {
  type Document,
  documentFrom,
  hasSection,
  openDocument,
  rangeOf,
} from '../../server/src/job/document.ts'
import type { Refusal } from '../../server/src/job/file-text.ts'
import { linkFile } from '../../server/src/job/files.ts'

/** The language of these tests: `#   ^^^^ words` below a line marks where a finding stands and words it must have; `#<- words` marks one that
 * begins at the left margin. */
export interface Mark {
  readonly line: number
  readonly from: number
  /** Absent: only where it begins counts. */
  readonly to?: number
  readonly words: string
}

export function marksIn(text: string): readonly Mark[] {
  const marks: Mark[] = []
  let line = -1 // the last line that is not a mark
  text.split('\n').forEach((content, i) => {
    const carets = /^#( *)(\^+)(?: (.*))?$/.exec(content)
    const margin = /^# ?<-(?: (.*))?$/.exec(content)
    if (carets) {
      const from = 1 + (carets[1]?.length ?? 0)
      marks.push({ line, from, to: from + (carets[2]?.length ?? 0), words: carets[3] ?? '' })
    } else if (margin) marks.push({ line, from: 0, words: margin[1] ?? '' })
    else line = i
  })
  return marks
}

export interface Outcome {
  readonly findings: readonly Finding[]
  readonly document: Document
}

interface Options {
  readonly today?: string
  readonly others?: Readonly<Record<string, string>>
  readonly onFault?: (check: string, error: unknown) => void
}

/** Files that no text can stand for. */
const refused: Readonly<Record<string, Refusal>> = {
  'parts/too-large.wright': { type: 'file-too-large' },
  'parts/not-utf8.wright': { type: 'file-not-utf8', encoding: 'UTF-16' },
  'parts/unreadable.wright': { type: 'file-unreadable', why: 'permission denied' },
}

const rethrown = (check: string, error: unknown): never => {
  throw new Error(`${check} failed`, { cause: error })
}

/** Findings of these checks over a text, alone in its folder as `a.wright` but for `others`. */
export function findingsOf(
  text: string,
  checks: readonly Check[],
  { today = '2026-03-10', others = {}, onFault = rethrown }: Options = {},
): Outcome {
  const document = openDocument(text)
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', document, (path) => {
    const read = others[path] ?? refused[path]
    return read === undefined ? undefined : documentFrom(read)
  })
  const checker = new Checker(analysis, checks)
  return { findings: checker.check(file, { today, onFault }), document }
}

export const placed = ({ findings, document }: Outcome) =>
  findings
    .filter((finding) => hasSection(document, finding.at.section))
    .map((finding) => {
      const { start, end } = rangeOf(document, finding.at)
      return {
        check: finding.check,
        line: start.line,
        from: start.character,
        to: end.character,
        endLine: end.line,
        message: finding.message,
        said: fullMessage(finding),
        todo: finding.todo,
      }
    })
