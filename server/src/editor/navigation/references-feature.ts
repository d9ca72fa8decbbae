import { type Location, ReferencesRequest, ResponseError } from 'vscode-languageserver'
import { rangeOf } from '../../job/document.ts'
import { featureAt } from '../feature.ts'
import { filesAroundOpen, ofOneMoment } from './around.ts'
import { references } from './references.ts'

export const referencesFeature = featureAt(
  ReferencesRequest.type,
  { referencesProvider: { workDoneProgress: true } },
  async (asked, at) => {
    const { params, workspace, open } = asked
    const around = await filesAroundOpen(asked)
    if (around instanceof ResponseError) return around
    return ofOneMoment(asked, async () => {
      const found: Location[] = []
      for await (const { defines, at: place, in: of } of references(workspace.viewOf(open), at, around))
        if (params.context.includeDeclaration || !defines)
          found.push({ uri: of.uri, range: rangeOf(of.file.document, place) })
      return found
    })
  },
)
