import {
  ErrorCodes,
  ExecuteCommandRequest,
  ResponseError,
  type TextDocumentPositionParams,
} from 'vscode-languageserver'
import { locate } from '../job/document.ts'
import { workspaceFeature } from './feature.ts'
import { planAt } from './plan.ts'

/** Its one argument says the text and a place in it, as in LSP 3.17 TextDocumentPositionParams. The answer is plain text. */
export const planCommand = 'shaftwright.plan'

export const planFeature = workspaceFeature(
  ExecuteCommandRequest.type,
  { executeCommandProvider: { commands: [planCommand] } },
  ({ params, workspace, findingsOf }): string | null | ResponseError<void> => {
    const { command, arguments: given = [] } = params
    if (command !== planCommand)
      return new ResponseError<void>(ErrorCodes.InvalidParams, `${command} is no command of this server.`)
    const [asked] = given as readonly Partial<TextDocumentPositionParams>[]
    const open = asked?.textDocument && workspace.get(asked.textDocument.uri)
    const at = open && asked.position && locate(open.document, asked.position)
    if (!at) return null
    return planAt(workspace.viewOf(open), at.section, at.offset, findingsOf(open)) ?? null
  },
)
