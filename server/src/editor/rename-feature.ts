import { LSPErrorCodes, RenameRequest, ResponseError } from 'vscode-languageserver'
import { locate, rangeOf } from '../job/document.ts'
import { filesAround } from './around.ts'
import { changedMeanwhile } from './changed-meanwhile.ts'
import { feature } from './feature.ts'
import { rename } from './rename.ts'
import { workspaceEdit } from './workspace-edit.ts'

export const renameFeature = feature(
  RenameRequest.type,
  { renameProvider: { prepareProvider: true } },
  async ({ params, workspace, open, client, token }) => {
    const around = await filesAround(workspace, token)
    if (workspace.get(open.uri)?.document !== open.document) return changedMeanwhile()
    const at = locate(open.document, params.position)
    if (!at) return null
    const view = { analysis: workspace.analysis, file: workspace.link(open) }
    const found = rename(view, at, { to: params.newName, around })
    if ('refused' in found) return new ResponseError<void>(LSPErrorCodes.RequestFailed, found.refused)
    const edits = found.map(({ at: place, in: { uri, file } }) => ({
      uri,
      range: rangeOf(file.document, place),
      newText: params.newName,
    }))
    return workspaceEdit(edits, workspace, client)
  },
)
