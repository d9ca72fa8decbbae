import { ReferencesRequest } from 'vscode-languageserver'
import { locate, rangeOf } from '../job/document.ts'
import { filesAround } from './around.ts'
import { changedMeanwhile } from './changed-meanwhile.ts'
import { feature } from './feature.ts'
import { references } from './references.ts'

export const referencesFeature = feature(
  ReferencesRequest.type,
  { referencesProvider: true },
  async ({ params, workspace, open, token }) => {
    const around = await filesAround(workspace, token)
    if (workspace.get(open.uri)?.document !== open.document) return changedMeanwhile()
    const at = locate(open.document, params.position)
    if (!at) return null
    const view = { analysis: workspace.analysis, file: workspace.link(open) }
    return references(view, at, around)
      .filter(({ defines }) => params.context.includeDeclaration || !defines)
      .map(({ at: place, in: { uri, file } }) => ({ uri, range: rangeOf(file.document, place) }))
  },
)
