import { LSPErrorCodes, PrepareRenameRequest, ResponseError } from 'vscode-languageserver'
import { locate, rangeOf } from '../job/document.ts'
import { feature } from './feature.ts'
import { renamable } from './rename.ts'

export const prepareRenameFeature = feature(
  PrepareRenameRequest.type,
  { renameProvider: { prepareProvider: true } },
  ({ params, workspace, open }) => {
    const at = locate(open.document, params.position)
    if (!at) return null
    const { section, offset } = at
    const found = renamable({ analysis: workspace.analysis, file: workspace.link(open) }, section, offset)
    if ('refused' in found) return new ResponseError<void>(LSPErrorCodes.RequestFailed, found.refused)
    return { range: rangeOf(open.document, { section, span: found.span }), placeholder: found.name }
  },
)
