import { type SymbolInformation, SymbolKind } from 'vscode-languageserver'
import type { WorkspaceSymbol } from './workspace-symbols.ts'

const kinds: ReadonlyMap<string, SymbolKind> = new Map([
  ['job', SymbolKind.Package],
  ['drive', SymbolKind.Module],
  ['reading', SymbolKind.Event],
  ['move', SymbolKind.Event],
  ['concession', SymbolKind.Key],
])

/** The sign an editor puts before a block in a list: what is neither the job, a drive nor something that was done is a part. */
export const symbolKind = (kind: string): SymbolKind => kinds.get(kind) ?? SymbolKind.Object

/** A block in a list that shows no tree. */
export const symbolInformation = ({
  name,
  kind,
  container,
  location,
}: WorkspaceSymbol): SymbolInformation => ({
  name,
  kind: symbolKind(kind),
  ...(container !== '' && { containerName: container }),
  location,
})
