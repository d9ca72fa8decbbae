import { type ServerCapabilities, type TextEdit, WillRenameFilesRequest } from 'vscode-languageserver'
import { rangeOf } from '../job/document.ts'
import { filesAround } from './around.ts'
import { workspaceFeature } from './feature.ts'
import { rewrittenUses } from './file-renames.ts'

const capability: ServerCapabilities = {
  workspace: {
    fileOperations: {
      willRename: {
        filters: [
          { pattern: { glob: '**/*.wright', matches: 'file' } },
          { pattern: { glob: '**', matches: 'folder' } },
        ],
      },
    },
  },
}

export const fileRenamesFeature = workspaceFeature(
  WillRenameFilesRequest.type,
  capability,
  async ({ params, workspace, token }) => {
    await workspace.list()
    const changes: Record<string, TextEdit[]> = {}
    for (const { in: of, at, text } of rewrittenUses(await filesAround(workspace, token), params.files)) {
      const edits = changes[of.uri] ?? []
      changes[of.uri] = edits
      edits.push({ range: rangeOf(of.file.document, at), newText: text })
    }
    return Object.keys(changes).length > 0 ? { changes } : null
  },
)
