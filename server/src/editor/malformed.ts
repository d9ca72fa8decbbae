type Holds = (value: unknown) => boolean

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null
const isText: Holds = (value) => typeof value === 'string'
const isCount: Holds = (value) => Number.isInteger(value) && (value as number) >= 0
const isPosition: Holds = (value) => isObject(value) && isCount(value['line']) && isCount(value['character'])
const isRange: Holds = (value) => isObject(value) && isPosition(value['start']) && isPosition(value['end'])
const listOf =
  (holds: Holds): Holds =>
  (value) =>
    Array.isArray(value) && value.every(holds)

/** What LSP 3.17 has under these names, wherever they stand. */
const parts = {
  textDocument: (value) => isObject(value) && isText(value['uri']),
  position: isPosition,
  positions: listOf(isPosition),
  range: isRange,
  newName: isText,
  query: isText,
  ch: isText,
  command: isText,
  previousResultId: isText,
  item: (value) => isObject(value) && isText(value['uri']) && isRange(value['selectionRange']),
  files: listOf((file) => isObject(file) && isText(file['oldUri']) && isText(file['newUri'])),
  context: isObject,
} satisfies Record<string, Holds>

const has = (...names: readonly (keyof typeof parts)[]) => names
const place = has('textDocument', 'position')

/** What has to be there for a request to be answered. */
const needed: Readonly<Record<string, readonly (keyof typeof parts)[]>> = {
  'textDocument/codeAction': has('textDocument', 'range', 'context'),
  'textDocument/completion': place,
  'textDocument/definition': place,
  'textDocument/documentHighlight': place,
  'textDocument/hover': place,
  'textDocument/inlayHint': has('textDocument', 'range'),
  'textDocument/onTypeFormatting': has('textDocument', 'position', 'ch'),
  'textDocument/prepareRename': place,
  'textDocument/prepareTypeHierarchy': place,
  'textDocument/rangeFormatting': has('textDocument', 'range'),
  'textDocument/references': has('textDocument', 'position', 'context'),
  'textDocument/rename': has('textDocument', 'position', 'newName'),
  'textDocument/selectionRange': has('textDocument', 'positions'),
  'textDocument/semanticTokens/full/delta': has('textDocument', 'previousResultId'),
  'textDocument/semanticTokens/range': has('textDocument', 'range'),
  'textDocument/signatureHelp': place,
  'typeHierarchy/subtypes': has('item'),
  'typeHierarchy/supertypes': has('item'),
  'workspace/executeCommand': has('command'),
  'workspace/symbol': has('query'),
  'workspace/willRenameFiles': has('files'),
}

/** What is wrong with what is sent along with a request, in words; undefined when everything that is needed is there. */
export function malformed(method: string, params: unknown): string | undefined {
  const names = needed[method] ?? (method.startsWith('textDocument/') ? has('textDocument') : [])
  const given = isObject(params) ? params : {}
  const wrong = names.filter((name) => !parts[name](given[name]))
  return wrong.length > 0 ? `${method}: ${wrong.join(', ')} not as LSP 3.17 has it` : undefined
}
