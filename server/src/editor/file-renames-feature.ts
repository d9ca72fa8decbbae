import { type ServerCapabilities, WillRenameFilesRequest } from 'vscode-languageserver'
import { rangeOf } from '../job/document.ts'
import { filesAround } from './around.ts'
import { workspaceFeature } from './feature.ts'
import { rewrittenUses } from './file-renames.ts'
import { workspaceEdit } from './workspace-edit.ts'

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
  async ({ params, workspace, client, token }) => {
    const around = await filesAround(workspace, token)
    const edits = rewrittenUses(around, params.files).map(({ in: { uri, file }, at, text }) => ({
      uri,
      edit: { range: rangeOf(file.document, at), newText: text },
    }))
    return edits.length > 0 ? workspaceEdit(edits, workspace, client) : null
  },
)
