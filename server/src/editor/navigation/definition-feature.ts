import { DefinitionRequest } from 'vscode-languageserver'
import { featureAt } from '../feature.ts'
import { definition } from './definition.ts'

export const definitionFeature = featureAt(
  DefinitionRequest.type,
  { definitionProvider: true },
  ({ workspace, open }, { section, offset }) => {
    const place = definition(workspace.viewOf(open), section, offset)
    return (place && workspace.locate(open, place)) ?? null
  },
)
