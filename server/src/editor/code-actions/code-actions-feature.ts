import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionRequest,
  type Diagnostic,
  type Range,
  type ServerCapabilities,
  type SnippetTextEdit,
  type TextEdit,
} from 'vscode-languageserver'
import type { Finding } from '../../checks/check.ts'
import { asSnippet, type Rewritten } from '../../checks/fix-layout.ts'
import { isRevision } from '../../host/revision.ts'
import { rangeOf } from '../../job/document.ts'
import { harmless } from '../../syntax/harmless.ts'
import { feature, type TextRequestContext } from '../feature.ts'
import { changedMeanwhile } from '../transport/changed-meanwhile.ts'
import { pause } from '../transport/quiet.ts'
import type { OpenFile } from '../workspace/workspace.ts'
import { takesBlanks, workspaceEdit } from '../workspace/workspace-edit.ts'
import { actionsFor, fixAll } from './code-actions.ts'

const fixAllKind = `${CodeActionKind.SourceFixAll}.shaftwright`

/** The kinds are for an editor that tells actions by them (LSP 3.17, CodeActionOptions). */
const codeActionCapability = ({ textDocument }: ClientCapabilities): ServerCapabilities => ({
  codeActionProvider: textDocument?.codeAction?.codeActionLiteralSupport
    ? { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind] }
    : true,
})

export const codeActionsFeature = feature(
  CodeActionRequest.type,
  codeActionCapability,
  async (asked: TextRequestContext<CodeActionParams>) => {
    const { params, workspace, open, client, token } = asked
    if (isRevision(open.uri)) return []
    const given = {
      ...workspace.viewOf(open),
      today: asked.today,
      findings: asked.findingsOf(open),
      blanks: takesBlanks(client),
    }
    const changed = (edits: readonly Rewritten[]) =>
      workspaceEdit(
        edits.map((edit) => ({ uri: open.uri, edit: textEdit(open, edit) })),
        workspace,
        client,
      )
    const { diagnostics, only } = params.context
    const wanted = (kind: string) =>
      !only || only.some((asked) => kind === asked || kind.startsWith(`${asked}.`))
    const isTouched = (finding: Finding): boolean => {
      const at = workspace.locate(open, finding.at)
      return at?.uri === open.uri && touches(at.range, params.range)
    }
    const quick: CodeAction[] = []
    if (wanted(CodeActionKind.QuickFix))
      for (const { title, finding, preferred, edits } of actionsFor(given, isTouched)) {
        quick.push({
          title: harmless(title),
          kind: CodeActionKind.QuickFix,
          ...answering(diagnostics, finding.check, rangeOf(open.document, finding.at)),
          ...(preferred && { isPreferred: true }),
          edit: changed(edits),
        })
        // An edit that has arrived does not wait for the rest.
        await pause()
        if (token.isCancellationRequested) return quick
        if (workspace.get(open.uri)?.document !== open.document) return changedMeanwhile()
      }
    const all = only && wanted(fixAllKind) ? fixAll(given) : []
    if (all.length === 0) return quick
    return [...quick, { title: 'Fix all safe problems', kind: fixAllKind, edit: changed(all) }]
  },
)

function textEdit({ document }: OpenFile, { at, newText, hasBlanks }: Rewritten): TextEdit | SnippetTextEdit {
  const range = rangeOf(document, at)
  return hasBlanks ? { range, snippet: { kind: 'snippet', value: asSnippet(newText) } } : { range, newText }
}

/** The editor's own diagnostics that an action answers: those that say what is found now, where it is found now. */
function answering(
  diagnostics: readonly Diagnostic[],
  check: string,
  range: Range,
): { readonly diagnostics?: Diagnostic[] } {
  const own = diagnostics.filter(({ code, range: at }) => code === check && isSame(at, range))
  return own.length > 0 ? { diagnostics: own } : {}
}

const order = (a: Range['start'], b: Range['start']): number => a.line - b.line || a.character - b.character
const touches = (a: Range, b: Range): boolean => order(a.start, b.end) <= 0 && order(b.start, a.end) <= 0
const isSame = (a: Range, b: Range): boolean => order(a.start, b.start) === 0 && order(a.end, b.end) === 0
