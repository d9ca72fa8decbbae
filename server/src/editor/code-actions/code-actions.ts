import { acceptanceFor, fixesFor } from '../../areas/fixes.ts'
import type { Finding } from '../../checks/check.ts'
import { layOut, type Rewritten } from '../../checks/fix-layout.ts'
import type { Analysis } from '../../job/analysis.ts'
import type { JobFile } from '../../job/files.ts'

interface ActionContext {
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

/** No more is offered for one selection: nobody reads so long a list. */
const maxOffered = 200
/** Nor is more text laid out for it, in UTF-16 units: each fix is shown in the layout of its whole section. */
const maxLaidOut = 2_000_000

/** What is offered for the findings that `isAsked` picks, most likely first; of very many, for the first of them. One at a time, so that the caller can
 * do other work between them. */
export function* actionsFor(given: ActionContext, isAsked: (finding: Finding) => boolean): Generator<Action> {
  let offered = 0
  let laidOut = 0
  for (const finding of given.findings) {
    if (offered >= maxOffered || laidOut >= maxLaidOut) return
    if (!isAsked(finding)) continue
    for (const { title, preferred = false, edits } of [
      ...fixesFor(finding, given),
      ...acceptanceFor(finding, given),
    ]) {
      const laid = layOut(edits, given)
      for (const section of new Set(edits.map(({ at }) => at.section))) laidOut += section.text.length
      if (laid.length === 0) continue
      offered += 1
      yield { title, finding, preferred, edits: laid }
    }
  }
}

/** All fixes that are safe without asking, as one change. */
export function fixAll(given: ActionContext): readonly Rewritten[] {
  return layOut(
    given.findings.flatMap((finding) => safeEdits(finding, given)),
    given,
  )
}

const safeEdits = (finding: Finding, given: ActionContext) =>
  fixesFor(finding, given).find(({ safe }) => safe)?.edits ?? []
