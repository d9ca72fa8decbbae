import { type ClientCapabilities, type MarkupContent, MarkupKind } from 'vscode-languageserver'
import type { Markdown } from '../../areas/common/markdown.ts'
import { plainText } from './plain-text.ts'

/** What an editor says it can show, the format it likes best first (LSP 3.17). */
const formatsOf = {
  hover: ({ textDocument }: ClientCapabilities) => textDocument?.hover?.contentFormat,
  completion: ({ textDocument }: ClientCapabilities) =>
    textDocument?.completion?.completionItem?.documentationFormat,
  signatureHelp: ({ textDocument }: ClientCapabilities) =>
    textDocument?.signatureHelp?.signatureInformation?.documentationFormat,
}

/** Markdown as an editor takes it there: one that names no format, or likes plain text better, gets plain text. */
export function markup(
  client: ClientCapabilities,
  where: keyof typeof formatsOf,
  markdown: Markdown,
): MarkupContent {
  const [best] = (formatsOf[where](client) ?? []).filter((kind) => MarkupKind.is(kind))
  return best === MarkupKind.Markdown
    ? { kind: MarkupKind.Markdown, value: markdown }
    : { kind: MarkupKind.PlainText, value: plainText(markdown) }
}
