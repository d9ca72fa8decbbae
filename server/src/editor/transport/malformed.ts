import { newJobRequest } from '../client-requests.ts'

type Holds = (value: unknown) => boolean

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null
const isText: Holds = (value) => typeof value === 'string'
const isCount: Holds = (value) => Number.isInteger(value) && (value as number) >= 0
const isPosition: Holds = (value) => isObject(value) && isCount(value['line']) && isCount(value['character'])
const isRange: Holds = (value) => isObject(value) && isPosition(value['start']) && isPosition(value['end'])
const isOneOf =
  (...values: readonly unknown[]): Holds =>
  (value) =>
    values.includes(value)
const listOf =
  (holds: Holds): Holds =>
  (value) =>
    Array.isArray(value) && value.every(holds)

const isGiven =
  (...names: readonly string[]): Holds =>
  (value) =>
    isObject(value) && names.every((name) => isText(value[name]))

const optional =
  (holds: Holds): Holds =>
  (value) =>
    value === undefined || value === null || holds(value)

const isChange: Holds = (value) =>
  isObject(value) && isText(value['text']) && optional(isRange)(value['range'])
const isAboutActions: Holds = (value) =>
  isObject(value) &&
  listOf((of) => isObject(of) && isRange(of['range']))(value['diagnostics']) &&
  optional(listOf(isText))(value['only'])
const isItem: Holds = (value) => isObject(value) && isText(value['uri']) && isRange(value['selectionRange'])

const textDocument = isGiven('uri')
const place = { textDocument, position: isPosition }
const stretch = { textDocument, range: isRange }
const uris = listOf(isGiven('uri'))

/** What of LSP 3.17 has to be there for a request to be answered, or a notice to be taken. */
const needed: Readonly<Record<string, Readonly<Record<string, Holds>>>> = {
  initialize: {
    rootUri: optional(isText),
    workspaceFolders: optional(listOf(isGiven('uri'))),
  },
  [newJobRequest]: {
    vessel: isText,
    drives: isOneOf(1, 2),
    units: isOneOf('metric', 'inch'),
    feet: isOneOf('studs', 'shims'),
  },
  'textDocument/codeAction': { ...stretch, context: isAboutActions },
  'textDocument/completion': place,
  'textDocument/definition': place,
  'textDocument/didChange': {
    textDocument,
    contentChanges: listOf(isChange),
  },
  'textDocument/didOpen': { textDocument: isGiven('uri', 'text') },
  'textDocument/documentHighlight': place,
  'textDocument/hover': place,
  'textDocument/inlayHint': stretch,
  'textDocument/onTypeFormatting': { ...place, ch: isText },
  'textDocument/prepareRename': place,
  'textDocument/prepareTypeHierarchy': place,
  'textDocument/rangeFormatting': stretch,
  'textDocument/references': { ...place, context: isObject },
  'textDocument/rename': { ...place, newName: isText },
  'textDocument/selectionRange': { textDocument, positions: listOf(isPosition) },
  'textDocument/semanticTokens/full/delta': { textDocument, previousResultId: isText },
  'textDocument/semanticTokens/range': stretch,
  'textDocument/signatureHelp': place,
  'typeHierarchy/subtypes': { item: isItem },
  'typeHierarchy/supertypes': { item: isItem },
  'shaftwright/plan': { textDocument, position: optional(isPosition), path: optional(isText) },
  // Of any kind: what makes no sense stands at its default.
  'workspace/didChangeConfiguration': { settings: () => true },
  'workspace/didChangeWatchedFiles': { changes: uris },
  'workspace/didChangeWorkspaceFolders': {
    event: (value) => isObject(value) && uris(value['added']) && uris(value['removed']),
  },
  'workspace/diagnostic': { previousResultIds: listOf(isGiven('uri', 'value')) },
  'workspace/didCreateFiles': { files: uris },
  'workspace/didDeleteFiles': { files: uris },
  'workspace/didRenameFiles': { files: listOf(isGiven('oldUri', 'newUri')) },
  'workspace/executeCommand': { command: isText },
  'workspace/symbol': { query: isText },
  'workspace/willRenameFiles': { files: listOf(isGiven('oldUri', 'newUri')) },
}

/** What is wrong with what is sent along with a request or a notice, in words; undefined when everything that is needed is there. */
export function malformed(method: string, params: unknown): string | undefined {
  const parts = needed[method] ?? (method.startsWith('textDocument/') ? { textDocument } : {})
  const wrong = Object.entries(parts).flatMap(([name, holds]) =>
    isObject(params) && holds(params[name]) ? [] : [name],
  )
  return wrong.length > 0 ? `${method}: ${wrong.join(', ')} not as LSP 3.17 has it` : undefined
}
