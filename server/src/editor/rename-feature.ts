import { LSPErrorCodes, RenameRequest, ResponseError } from 'vscode-languageserver'
import { rangeOf } from '../job/document.ts'
import { filesAroundOpen } from './around.ts'
import { featureAt } from './feature.ts'
import { renameCapability } from './prepare-rename-feature.ts'
import { rename } from './rename.ts'
import { workspaceEdit } from './workspace-edit.ts'

export const renameFeature = featureAt(RenameRequest.type, renameCapability, async (asked, at) => {
  const { params, workspace, open, client } = asked
  const around = await filesAroundOpen(asked)
  if (around instanceof ResponseError) return around
  const found = rename(workspace.viewOf(open), at, { to: params.newName, around })
  if ('refused' in found) return new ResponseError<void>(LSPErrorCodes.RequestFailed, found.refused)
  const edits = found.map(({ at: place, in: { uri, file } }) => ({
    uri,
    edit: { range: rangeOf(file.document, place), newText: params.newName },
  }))
  return workspaceEdit(edits, workspace, client)
})
