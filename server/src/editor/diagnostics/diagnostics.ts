import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  type Location,
} from 'vscode-languageserver'
import { withoutTicks } from '../../areas/common/markdown.ts'
import type { Finding, Severity } from '../../checks/check.ts'
import { harmless, harmlessLines } from '../../syntax/harmless.ts'
import type { OpenFile, Workspace } from '../workspace/workspace.ts'

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
export const toDiagnostics = (findings: readonly Finding[], context: DiagnosticsContext): Diagnostic[] =>
  findings.flatMap((finding) => toDiagnostic(finding, context) ?? [])

/** What is wrong in the first line, which a list of problems shows; then the limit and its source; then what to do. */
function inLines({ message, detail, source, todo }: Finding): string {
  const from = source.basis === 'the language' ? [] : [`Source: ${source.text}.`]
  const second = [...(detail === undefined ? [] : [detail]), ...from].join(' ')
  return [message, ...(second === '' ? [] : [second]), todo].join('\n')
}

/** What was made of a finding last. Most findings stay as they are and where they are while somebody types. */
const lastMade = new WeakMap<
  Finding,
  {
    readonly places: readonly (Location | undefined)[]
    readonly docs: string | undefined
    readonly diagnostic: Diagnostic
  }
>()

const isSame = (a: Location | undefined, b: Location | undefined): boolean =>
  a?.uri === b?.uri &&
  a?.range.start.line === b?.range.start.line &&
  a?.range.start.character === b?.range.start.character &&
  a?.range.end.line === b?.range.end.line &&
  a?.range.end.character === b?.range.end.character

/** A finding as an editor shows it; undefined when its place is no longer there. */
function toDiagnostic(
  finding: Finding,
  { workspace, open, docs }: DiagnosticsContext,
): Diagnostic | undefined {
  const places = [finding, ...(finding.related ?? [])].map(({ at }) => workspace.locate(open, at))
  const [at, ...others] = places
  if (!at) return undefined
  const before = lastMade.get(finding)
  if (before?.docs === docs && before?.places.every((place, i) => isSame(place, places[i])))
    return before.diagnostic
  const diagnostic = made(finding, at, others, docs)
  lastMade.set(finding, { places, docs, diagnostic })
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
  const { check, found, limit, source, assumptions } = finding
  return {
    range: at.range,
    severity: severities[finding.severity],
    code: check,
    ...(docs && { codeDescription: { href: `${docs}${check}.md` } }),
    source: 'shaftwright',
    message: harmlessLines(withoutTicks(inLines(finding))),
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
