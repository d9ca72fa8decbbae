import { DefinitionRequest } from 'vscode-languageserver'
import { locate } from '../job/document.ts'
import { definition } from './definition.ts'
import { feature } from './feature.ts'

export const definitionFeature = feature(
  DefinitionRequest.type,
  { definitionProvider: true },
  ({ params, workspace, open }) => {
    const at = locate(open.document, params.position)
    const view = { analysis: workspace.analysis, file: workspace.link(open) }
    const place = at && definition(view, at.section, at.offset)
    return (place && workspace.locate(open, place)) ?? null
  },
)
