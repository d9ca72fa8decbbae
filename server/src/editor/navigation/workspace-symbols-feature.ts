import { WorkspaceSymbolRequest } from 'vscode-languageserver'
import { workspaceFeature } from '../feature.ts'
import { symbolInformation } from './symbol-kinds.ts'
import { allSymbols, matching } from './workspace-symbols.ts'

export const workspaceSymbolsFeature = workspaceFeature(
  WorkspaceSymbolRequest.type,
  { workspaceSymbolProvider: true },
  async (asked) =>
    matching(asked.params.query, await allSymbols(asked.workspace, asked)).map(symbolInformation),
)
