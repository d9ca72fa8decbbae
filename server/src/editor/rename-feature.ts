import { LSPErrorCodes, RenameRequest, ResponseError, type TextEdit } from 'vscode-languageserver'
import { locate, rangeOf } from '../job/document.ts'
import { filesAround } from './around.ts'
import { changedMeanwhile } from './changed-meanwhile.ts'
import { feature } from './feature.ts'
import { rename } from './rename.ts'

export const renameFeature = feature(
  RenameRequest.type,
  { renameProvider: { prepareProvider: true } },
  async ({ params, workspace, open, token }) => {
    const around = await filesAround(workspace, token)
    if (workspace.get(open.uri)?.document !== open.document) return changedMeanwhile()
    const at = locate(open.document, params.position)
    if (!at) return null
    const view = { analysis: workspace.analysis, file: workspace.link(open) }
    const found = rename(view, at, { to: params.newName, around })
    if ('refused' in found) return new ResponseError<void>(LSPErrorCodes.RequestFailed, found.refused)
    const changes: Record<string, TextEdit[]> = {}
    for (const { at: place, in: of } of found) {
      const edits = changes[of.uri] ?? []
      changes[of.uri] = edits
      edits.push({ range: rangeOf(of.file.document, place), newText: params.newName })
    }
    return { changes }
  },
)
