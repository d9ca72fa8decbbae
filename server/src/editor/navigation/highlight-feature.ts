import { DocumentHighlightKind, DocumentHighlightRequest } from 'vscode-languageserver'
import { rangeOf } from '../../job/document.ts'
import { featureAt } from '../feature.ts'
import { highlights } from './highlight.ts'

export const highlightFeature = featureAt(
  DocumentHighlightRequest.type,
  { documentHighlightProvider: true },
  ({ workspace, open }, { section, offset }) =>
    highlights(workspace.viewOf(open), section, offset).map(({ at, defines }) => ({
      range: rangeOf(open.document, at),
      kind: defines ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    })),
)
