import { ReferencesRequest, ResponseError } from 'vscode-languageserver'
import { rangeOf } from '../job/document.ts'
import { filesAroundOpen } from './around.ts'
import { featureAt } from './feature.ts'
import { references } from './references.ts'

export const referencesFeature = featureAt(
  ReferencesRequest.type,
  { referencesProvider: true },
  async (asked, at) => {
    const { params, workspace, open } = asked
    const around = await filesAroundOpen(asked)
    if (around instanceof ResponseError) return around
    return references(workspace.viewOf(open), at, around)
      .filter(({ defines }) => params.context.includeDeclaration || !defines)
      .map(({ at: place, in: { uri, file } }) => ({ uri, range: rangeOf(file.document, place) }))
  },
)
