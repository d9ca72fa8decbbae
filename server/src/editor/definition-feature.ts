import { DefinitionRequest } from 'vscode-languageserver'
import { definition } from './definition.ts'
import { featureAt } from './feature.ts'

export const definitionFeature = featureAt(
  DefinitionRequest.type,
  { definitionProvider: true },
  ({ workspace, open }, { section, offset }) => {
    const place = definition(workspace.viewOf(open), section, offset)
    return (place && workspace.locate(open, place)) ?? null
  },
)
