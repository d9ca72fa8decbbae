import { type SymbolInformation, WorkspaceSymbolRequest } from 'vscode-languageserver'
import { workspaceFeature } from './feature.ts'
import { symbolKind } from './symbol-kinds.ts'
import { allSymbols, matching } from './workspace-symbols.ts'

export const workspaceSymbolsFeature = workspaceFeature(
  WorkspaceSymbolRequest.type,
  { workspaceSymbolProvider: true },
  async ({ params, workspace, token }): Promise<SymbolInformation[]> =>
    matching(params.query, await allSymbols(workspace, token)).map(({ name, kind, container, location }) => ({
      name,
      kind: symbolKind(kind),
      ...(container !== '' && { containerName: container }),
      location,
    })),
)
