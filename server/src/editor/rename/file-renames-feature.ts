import {
  type FileOperationRegistrationOptions,
  ResponseError,
  type ServerCapabilities,
  WillRenameFilesRequest,
} from 'vscode-languageserver'
import { rangeOf } from '../../job/document.ts'
import { workspaceFeature } from '../feature.ts'
import { filesAround, ofOneMoment } from '../navigation/around.ts'
import { type EditIn, workspaceEdit } from '../workspace/workspace-edit.ts'
import { rewrittenUses } from './file-renames.ts'

/** The editor notifies the server when these files and folders are created, renamed or deleted. */
export const jobsAndFolders: FileOperationRegistrationOptions = {
  filters: [
    { pattern: { glob: '**/*.wright', matches: 'file' } },
    { pattern: { glob: '**', matches: 'folder' } },
  ],
}

const capability: ServerCapabilities = { workspace: { fileOperations: { willRename: jobsAndFolders } } }

export const fileRenamesFeature = workspaceFeature(WillRenameFilesRequest.type, capability, async (asked) => {
  const { params, workspace, client } = asked
  const around = await filesAround(workspace, asked)
  const edits = await ofOneMoment(asked, async () => {
    const found: EditIn[] = []
    for await (const { in: of, at, text } of rewrittenUses(around, params.files))
      found.push({ uri: of.uri, edit: { range: rangeOf(of.file.document, at), newText: text } })
    return found
  })
  if (edits instanceof ResponseError) return edits
  return edits.length > 0 ? workspaceEdit(edits, workspace, client) : null
})
