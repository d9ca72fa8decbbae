import { LSPErrorCodes, PrepareRenameRequest, ResponseError } from 'vscode-languageserver'
import { rangeOf } from '../job/document.ts'
import { featureAt } from './feature.ts'
import { renamable } from './rename.ts'

export const prepareRenameFeature = featureAt(
  PrepareRenameRequest.type,
  { renameProvider: { prepareProvider: true } },
  ({ workspace, open }, { section, offset }) => {
    const found = renamable(workspace.viewOf(open), section, offset)
    if ('refused' in found) return new ResponseError<void>(LSPErrorCodes.RequestFailed, found.refused)
    return { range: rangeOf(open.document, { section, span: found.span }), placeholder: found.name }
  },
)
