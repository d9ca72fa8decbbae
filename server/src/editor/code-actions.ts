import type { Finding } from '../checks/check.ts'
import { layOut, type Rewritten } from '../checks/fix-layout.ts'
import { acceptanceFor, fixesFor } from '../checks/fixes.ts'
import type { Analysis } from '../job/analysis.ts'
import type { JobFile } from '../job/files.ts'

interface Given {
  readonly analysis: Analysis
  readonly file: JobFile
  readonly today: string
  /** Whether the editor goes from blank to blank. */
  readonly blanks: boolean
  /** Findings of the text as it stands now. */
  readonly findings: readonly Finding[]
}

/** A change that is offered. */
export interface Action {
  readonly title: string
  readonly finding: Finding
  readonly preferred: boolean
  readonly edits: readonly Rewritten[]
}

/** What is offered for the findings that `isAsked` picks, most likely first. */
export function actionsFor(given: Given, isAsked: (finding: Finding) => boolean): readonly Action[] {
  return given.findings.filter(isAsked).flatMap((finding) =>
    [...fixesFor(finding, given), ...acceptanceFor(finding, given)].flatMap(
      ({ title, preferred = false, edits }) => {
        const laid = layOut(edits, given)
        return laid.length === 0 ? [] : [{ title, finding, preferred, edits: laid }]
      },
    ),
  )
}

/** Everything that may be put right unasked, as one change. */
export function fixAll(given: Given): readonly Rewritten[] {
  return layOut(
    given.findings.flatMap((finding) => safeEdits(finding, given)),
    given,
  )
}

const safeEdits = (finding: Finding, given: Given) =>
  fixesFor(finding, given).find(({ safe }) => safe)?.edits ?? []
