import type {
  ClientCapabilities,
  SnippetTextEdit,
  TextDocumentEdit,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver'
import type { Workspace } from './workspace.ts'

export interface EditIn {
  readonly uri: string
  readonly edit: TextEdit | SnippetTextEdit
}

const versioned = ({ workspace }: ClientCapabilities): boolean =>
  workspace?.workspaceEdit?.documentChanges === true

/** Whether the editor goes from blank to blank of an edit (LSP 3.18, SnippetTextEdit). */
export const takesBlanks = (client: ClientCapabilities): boolean =>
  versioned(client) && client.workspace?.workspaceEdit?.snippetEditSupport === true

/** Edits in any files as one, each file's for the version that it was worked out on, so that an editor with another text does not take them.
 * Blanks are for an editor that `takesBlanks`. */
export function workspaceEdit(
  edits: readonly EditIn[],
  workspace: Workspace,
  client: ClientCapabilities,
): WorkspaceEdit {
  const changes: Record<string, TextDocumentEdit['edits']> = {}
  for (const { uri, edit } of edits) {
    const list = changes[uri] ?? []
    changes[uri] = list
    list.push(edit)
  }
  if (!versioned(client)) return { changes: changes as Record<string, TextEdit[]> }
  return {
    documentChanges: Object.entries(changes).map(([uri, of]) => ({
      textDocument: { uri, version: workspace.get(uri)?.version ?? null },
      edits: of,
    })),
  }
}
