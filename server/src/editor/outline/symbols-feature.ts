import { type DocumentSymbol, DocumentSymbolRequest } from 'vscode-languageserver'
import { type Document, rangeOf } from '../../job/document.ts'
import { feature } from '../feature.ts'
import { symbolInformation, symbolKind } from '../navigation/symbol-kinds.ts'
import { symbolsIn } from '../navigation/workspace-symbols.ts'
import { type BlockSymbol, symbolsOf } from './symbols.ts'

export const symbolsFeature = feature(
  DocumentSymbolRequest.type,
  { documentSymbolProvider: true },
  ({ open: { uri, document }, client }) =>
    client.textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport
      ? nested(document)
      : symbolsIn(uri, document).map(symbolInformation),
)

const nested = (document: Document): DocumentSymbol[] =>
  document.sections.flatMap((section) => {
    const shown = ({ name, kind, detail, span, nameSpan, children }: BlockSymbol): DocumentSymbol => ({
      name,
      detail,
      kind: symbolKind(kind),
      range: rangeOf(document, { section, span }),
      selectionRange: rangeOf(document, { section, span: nameSpan }),
      ...(children.length > 0 && { children: children.map(shown) }),
    })
    return symbolsOf(section).map(shown)
  })
