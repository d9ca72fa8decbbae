import { acceptanceFor, fixesFor } from '../../server/src/areas/fixes.ts'
import { allChecks } from '../../server/src/areas/index.ts'
import type { Finding } from '../../server/src/checks/check.ts'
import type { Fix } from '../../server/src/checks/fix.ts'
import { layOut } from '../../server/src/checks/fix-layout.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { type Document, openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'

export interface Offered {
  readonly finding: Finding
  readonly fix: Fix
  readonly document: Document
}

/** The offers to let findings stand. */
export const acceptances = { offer: acceptanceFor }

export interface Options {
  readonly today?: string
  readonly offer?: typeof fixesFor
  /** Texts of other files, by their path. */
  readonly others?: Readonly<Record<string, string>>
}

export interface Offers {
  readonly text: string
  readonly findings: readonly Finding[]
  readonly offers: readonly Offered[]
}

/** What is found in a text, and what is offered for the findings of one check, or of all. */
export function offersOf(
  text: string,
  check: string | undefined,
  { today = '2026-03-10', offer = fixesFor, others = {} }: Options = {},
): Offers {
  const document = openDocument(text)
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', document, (path) =>
    others[path] === undefined ? undefined : openDocument(others[path]),
  )
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const offers = findings
    .filter((finding) => check === undefined || finding.check === check)
    .flatMap((finding) =>
      offer(finding, { analysis, file, today }).map((fix): Offered => ({ finding, fix, document })),
    )
  return { text, findings, offers }
}

/** The text with a fix made, for an editor that takes text alone. */
export function applied(document: Document, fix: Fix): string {
  const edits = layOut(fix.edits, { blanks: false })
  return document.sections
    .map((section) => {
      const edit = edits.find(({ at }) => at.section === section)
      if (!edit) return section.text
      const { start, end } = edit.at.span
      return section.text.slice(0, start) + edit.newText + section.text.slice(end)
    })
    .join('')
}

/** The text after the one offer of this title. */
export function fixed(text: string, check: string, title: string): string {
  const { offers } = offersOf(text, check)
  const offer = offers.find(({ fix }) => fix.title === title)
  if (!offer) throw new Error(`${title} is not offered, but ${offers.map(({ fix }) => fix.title).join('; ')}`)
  return applied(offer.document, offer.fix)
}

export const titles = (text: string, check: string): readonly string[] =>
  offersOf(text, check).offers.map(({ fix }) => fix.title)
