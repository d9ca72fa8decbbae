import { SymbolKind } from 'vscode-languageserver'

const kinds: Readonly<Record<string, SymbolKind>> = {
  job: SymbolKind.Package,
  drive: SymbolKind.Module,
  reading: SymbolKind.Event,
  move: SymbolKind.Event,
  concession: SymbolKind.Key,
}

/** The sign an editor puts before a block in a list. */
export const symbolKind = (kind: string): SymbolKind =>
  Object.hasOwn(kinds, kind) ? (kinds[kind] ?? SymbolKind.Object) : SymbolKind.Object
