import {
  type ClientCapabilities,
  LSPErrorCodes,
  PrepareRenameRequest,
  ResponseError,
  type ServerCapabilities,
} from 'vscode-languageserver'
import { isRevision } from '../../host/revision.ts'
import { rangeOf } from '../../job/document.ts'
import { featureAt } from '../feature.ts'
import { renamable } from './rename.ts'

/** More than that there is renaming is for an editor that prepares it (LSP 3.17, RenameOptions). */
export const renameCapability = ({ textDocument }: ClientCapabilities): ServerCapabilities => ({
  renameProvider: textDocument?.rename?.prepareSupport
    ? { prepareProvider: true, workDoneProgress: true }
    : true,
})

/** The refusal for a text that nobody can change. */
export const notNow = (): ResponseError<void> =>
  new ResponseError<void>(
    LSPErrorCodes.RequestFailed,
    'This is an older revision of the file. It cannot be changed.',
  )

export const prepareRenameFeature = featureAt(
  PrepareRenameRequest.type,
  renameCapability,
  ({ workspace, open }, { section, offset }) => {
    if (isRevision(open.uri)) return notNow()
    const found = renamable(workspace.viewOf(open), section, offset)
    if ('refused' in found) return new ResponseError<void>(LSPErrorCodes.RequestFailed, found.refused)
    return { range: rangeOf(open.document, { section, span: found.span }), placeholder: found.name }
  },
)
