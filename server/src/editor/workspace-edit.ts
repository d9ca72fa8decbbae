import type { ClientCapabilities, Range, TextEdit, WorkspaceEdit } from 'vscode-languageserver'
import type { Workspace } from './workspace.ts'

export interface EditIn {
  readonly uri: string
  readonly range: Range
  readonly newText: string
}

/** Edits in any files as one, each file's for the version that it was worked out on, so that an editor with another text does not take them. */
export function workspaceEdit(
  edits: readonly EditIn[],
  workspace: Workspace,
  { workspace: can }: ClientCapabilities,
): WorkspaceEdit {
  const changes: Record<string, TextEdit[]> = {}
  for (const { uri, range, newText } of edits) {
    const list = changes[uri] ?? []
    changes[uri] = list
    list.push({ range, newText })
  }
  if (!can?.workspaceEdit?.documentChanges) return { changes }
  return {
    documentChanges: Object.entries(changes).map(([uri, of]) => ({
      textDocument: { uri, version: workspace.get(uri)?.version ?? null },
      edits: of,
    })),
  }
}
