import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  type Location,
} from 'vscode-languageserver'
import { withoutTicks } from '../../areas/common/markdown.ts'
import type { Finding, Severity } from '../../checks/check.ts'
import type { Section } from '../../job/model.ts'
import { harmless, harmlessLines } from '../../syntax/harmless.ts'
import type { OpenFile, SectionStart, Workspace } from '../workspace/workspace.ts'

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
}

interface DiagnosticsContext {
  readonly workspace: Workspace
  readonly open: OpenFile
  /** Where the pages of the checks stand. */
  readonly docs: string | undefined
}

/** The findings of a file as an editor shows them. */
export function toDiagnostics(findings: readonly Finding[], context: DiagnosticsContext): Diagnostic[] {
  const startOf = startsIn(context)
  return findings.flatMap((finding) => toDiagnostic(finding, context, startOf) ?? [])
}

type StartOf = (section: Section) => SectionStart | undefined

/** Where sections begin. Most findings stand in the section of the one before. */
function startsIn({ workspace, open }: DiagnosticsContext): StartOf {
  let last: Section | undefined
  let start: SectionStart | undefined
  return (section) => {
    if (section !== last) start = workspace.startOf(open, section)
    last = section
    return start
  }
}

/** What is wrong in the first line, which a list of problems shows; then the limit and its source; then what to do. */
function inLines({ message, detail, source, todo }: Finding): string {
  const from = source.basis === 'the language' ? [] : [`Source: ${source.text}.`]
  const second = [...(detail === undefined ? [] : [detail]), ...from].join(' ')
  return [message, ...(second === '' ? [] : [second]), todo].join('\n')
}

interface Made {
  /** Where the sections of its places begin, by the place in the finding. */
  readonly starts: readonly (SectionStart | undefined)[]
  readonly docs: string | undefined
  readonly diagnostic: Diagnostic
}

/** What was made of a finding last. Most findings stay as they are and where they are while somebody types. */
const lastMade = new WeakMap<Finding, Made>()

const isSame = (a: SectionStart | undefined, b: SectionStart | undefined): boolean =>
  a?.uri === b?.uri && a?.line === b?.line

const none: NonNullable<Finding['related']> = []

/** A finding as an editor shows it; undefined when its place is no longer there. */
function toDiagnostic(
  finding: Finding,
  { workspace, open, docs }: DiagnosticsContext,
  startOf: StartOf,
): Diagnostic | undefined {
  const { related = none } = finding
  const start = startOf(finding.at.section)
  if (!start) return undefined
  const before = lastMade.get(finding)
  if (
    before?.docs === docs &&
    isSame(start, before?.starts[0]) &&
    related.every(({ at }, i) => isSame(startOf(at.section), before?.starts[i + 1]))
  )
    return before?.diagnostic
  const starts = [start, ...related.map(({ at }) => startOf(at.section))]
  const [at, ...others] = [finding, ...related].map((one) => workspace.locate(open, one.at))
  if (!at) return undefined
  const diagnostic = made(finding, at, others, docs)
  lastMade.set(finding, { starts, docs, diagnostic })
  return diagnostic
}

function made(
  finding: Finding,
  at: Location,
  others: readonly (Location | undefined)[],
  docs: string | undefined,
): Diagnostic {
  const related = (finding.related ?? []).flatMap(({ message }, i): DiagnosticRelatedInformation[] => {
    const location = others[i]
    return location ? [{ location, message: harmless(withoutTicks(message)) }] : []
  })
  const { check } = finding
  return {
    range: at.range,
    severity: severities[finding.severity],
    code: check,
    ...(docs && { codeDescription: { href: `${docs}${check}.md` } }),
    source: 'shaftwright',
    message: harmlessLines(withoutTicks(inLines(finding))),
    ...(related.length > 0 && { relatedInformation: related }),
  }
}
