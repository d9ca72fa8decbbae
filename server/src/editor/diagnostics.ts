import { type Diagnostic, type DiagnosticRelatedInformation, DiagnosticSeverity } from 'vscode-languageserver'
import type { Finding, Severity } from '../checks/check.ts'
import type { OpenFile, Workspace } from './workspace.ts'

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
}

interface Told {
  readonly workspace: Workspace
  readonly open: OpenFile
  /** Where the pages of the checks stand. */
  readonly docs: string | undefined
}

/** More than anybody reads, and little enough for an editor to take at every keystroke. */
const most = 1000

/** The findings of a file as an editor shows them: the gravest when there are too many, and how many are left out. */
export function toDiagnostics(findings: readonly Finding[], told: Told): Diagnostic[] {
  const kept = new Set(
    findings.length > most
      ? findings.toSorted((a, b) => severities[a.severity] - severities[b.severity]).slice(0, most)
      : findings,
  )
  const shown = findings.flatMap((finding) => (kept.has(finding) && toDiagnostic(finding, told)) || [])
  const left = findings.length - kept.size
  const start = { line: 0, character: 0 }
  return left === 0
    ? shown
    : [
        ...shown,
        {
          range: { start, end: start },
          severity: DiagnosticSeverity.Warning,
          source: 'shaftwright',
          message: `${left} more findings are not shown.\nMend the first ones; most of the others will go with them.`,
        },
      ]
}

/** A finding as an editor shows it; undefined when its place is no longer there. */
function toDiagnostic(finding: Finding, { workspace, open, docs }: Told): Diagnostic | undefined {
  const at = workspace.locate(open, finding.at)
  if (!at) return undefined
  const related = (finding.related ?? []).flatMap(
    ({ at: place, message }): DiagnosticRelatedInformation[] => {
      const location = workspace.locate(open, place)
      return location ? [{ location, message }] : []
    },
  )
  const { check, found, limit, source, assumptions } = finding
  return {
    range: at.range,
    severity: severities[finding.severity],
    code: check,
    ...(docs && { codeDescription: { href: `${docs}${check}.md` } }),
    source: 'shaftwright',
    message: `${finding.message}\n${finding.todo}`,
    ...(related.length > 0 && { relatedInformation: related }),
    data: {
      ...finding.data,
      check,
      basis: source,
      ...(found !== undefined && { found }),
      ...(limit !== undefined && { limit }),
      ...(assumptions && { assumptions }),
    },
  }
}
