import * as z from 'zod/mini'
import { newJobRequest } from '../client-requests.ts'

const text = z.string()
/** Any size: editors mean the end of a line or a file by a number far beyond it. */
const count = z.number().check(z.gte(0), z.refine(Number.isInteger))
const position = z.object({ line: count, character: count })
const range = z.object({ start: position, end: position })
const textDocument = z.object({ uri: text })
const onText = z.object({ textDocument })
const place = z.extend(onText, { position })
const stretch = z.extend(onText, { range })
const uris = z.array(textDocument)
const renames = z.array(z.object({ oldUri: text, newUri: text }))
const hierarchy = z.object({ item: z.object({ uri: text, selectionRange: range }) })

/** What of LSP 3.17 has to be there for a request to be answered, or a notice to be taken. */
const needed: Readonly<Record<string, z.ZodMiniObject>> = {
  initialize: z.object({
    rootUri: z.nullish(text),
    workspaceFolders: z.nullish(uris),
  }),
  [newJobRequest]: z.object({
    vessel: text,
    drives: z.literal([1, 2]),
    units: z.enum(['metric', 'inch']),
    feet: z.enum(['studs', 'shims']),
  }),
  'textDocument/codeAction': z.extend(stretch, {
    context: z.object({ diagnostics: z.array(z.object({ range })), only: z.nullish(z.array(text)) }),
  }),
  'textDocument/completion': place,
  'textDocument/definition': place,
  'textDocument/didChange': z.object({
    textDocument,
    contentChanges: z.array(z.object({ text, range: z.nullish(range) })),
  }),
  'textDocument/didOpen': z.object({ textDocument: z.object({ uri: text, text }) }),
  'textDocument/documentHighlight': place,
  'textDocument/hover': place,
  'textDocument/inlayHint': stretch,
  'textDocument/onTypeFormatting': z.extend(place, { ch: text }),
  'textDocument/prepareRename': place,
  'textDocument/prepareTypeHierarchy': place,
  'textDocument/rangeFormatting': stretch,
  'textDocument/references': z.extend(place, { context: z.object({}) }),
  'textDocument/rename': z.extend(place, { newName: text }),
  'textDocument/selectionRange': z.object({ textDocument, positions: z.array(position) }),
  'textDocument/semanticTokens/full/delta': z.object({ textDocument, previousResultId: text }),
  'textDocument/semanticTokens/range': stretch,
  'textDocument/signatureHelp': place,
  'typeHierarchy/subtypes': hierarchy,
  'typeHierarchy/supertypes': hierarchy,
  'shaftwright/plan': z.object({ textDocument, position: z.nullish(position), path: z.nullish(text) }),
  // Of any kind: what makes no sense stands at its default.
  'workspace/didChangeConfiguration': z.object({ settings: z.optional(z.unknown()) }),
  'workspace/didChangeWatchedFiles': z.object({ changes: uris }),
  'workspace/didChangeWorkspaceFolders': z.object({
    event: z.object({ added: uris, removed: uris }),
  }),
  'workspace/diagnostic': z.object({ previousResultIds: z.array(z.object({ uri: text, value: text })) }),
  'workspace/didCreateFiles': z.object({ files: uris }),
  'workspace/didDeleteFiles': z.object({ files: uris }),
  'workspace/didRenameFiles': z.object({ files: renames }),
  'workspace/executeCommand': z.object({ command: text }),
  'workspace/symbol': z.object({ query: text }),
  'workspace/willRenameFiles': z.object({ files: renames }),
}

/** What is wrong with what is sent along with a request or a notice, in words; undefined when everything that is needed is there. */
export function malformed(method: string, params: unknown): string | undefined {
  const schema = needed[method] ?? (method.startsWith('textDocument/') ? onText : undefined)
  const wrong = new Set(schema?.safeParse(params).error?.issues.map(({ path: [name = 'params'] }) => name))
  return wrong.size > 0 ? `${method}: ${[...wrong].join(', ')} not as LSP 3.17 has it` : undefined
}
