import { type DocumentSymbol, DocumentSymbolRequest } from 'vscode-languageserver'
import { rangeOf } from '../job/document.ts'
import { feature } from './feature.ts'
import { symbolKind } from './symbol-kinds.ts'
import { type BlockSymbol, symbolsOf } from './symbols.ts'

export const symbolsFeature = feature(
  DocumentSymbolRequest.type,
  { documentSymbolProvider: true },
  ({ open: { document } }) =>
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
    }),
)
