import { LSPErrorCodes, RenameRequest, ResponseError } from 'vscode-languageserver'
import { isRevision } from '../../host/revision.ts'
import { featureAt } from '../feature.ts'
import { filesAroundOpen, ofOneMoment } from '../navigation/around.ts'
import { workspaceEdit } from '../workspace/workspace-edit.ts'
import { notNow, renameCapability } from './prepare-rename-feature.ts'
import { rename } from './rename.ts'

export const renameFeature = featureAt(RenameRequest.type, renameCapability, async (asked, at) => {
  const { params, workspace, open, client } = asked
  if (isRevision(open.uri)) return notNow()
  const around = await filesAroundOpen(asked)
  if (around instanceof ResponseError) return around
  const { newName } = params
  const found = await ofOneMoment(asked, () => rename(workspace.viewOf(open), at, { to: newName, around }))
  if (found instanceof ResponseError) return found
  if ('refused' in found) return new ResponseError<void>(LSPErrorCodes.RequestFailed, found.refused)
  const edits = found.map(({ uri, range }) => ({ uri, edit: { range, newText: newName } }))
  return workspaceEdit(edits, workspace, client)
})
