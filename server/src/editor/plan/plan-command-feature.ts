import {
  ErrorCodes,
  ExecuteCommandRequest,
  ResponseError,
  type TextDocumentPositionParams,
} from 'vscode-languageserver'
import { locate } from '../../job/document.ts'
import { planCommand } from '../client-requests.ts'
import { workspaceFeature } from '../feature.ts'
import { plannedAt, planSheet } from './plan.ts'

/** Its one argument says the text and a place in it, as in LSP 3.17 TextDocumentPositionParams. The answer is plain text. */
export const planCommandFeature = workspaceFeature(
  ExecuteCommandRequest.type,
  { executeCommandProvider: { commands: [planCommand] } },
  (asked): string | null | ResponseError<void> => {
    const { command, arguments: given = [] } = asked.params
    if (command !== planCommand)
      return new ResponseError<void>(ErrorCodes.InvalidParams, `${command} is not a command of this server.`)
    const [place] = given as readonly Partial<TextDocumentPositionParams>[]
    const open = place?.textDocument && asked.workspace.get(place.textDocument.uri)
    const at = open && place.position && locate(open.document, place.position)
    if (!at) return null
    const view = asked.workspace.viewOf(open)
    const planned = plannedAt(view, at.section, at.offset)
    return planned ? planSheet(view, planned, { findings: asked.findingsOf(open), today: asked.today }) : null
  },
)
