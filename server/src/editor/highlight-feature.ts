import { DocumentHighlightKind, DocumentHighlightRequest } from 'vscode-languageserver'
import { locate, rangeOf } from '../job/document.ts'
import { feature } from './feature.ts'
import { highlights } from './highlight.ts'

export const highlightFeature = feature(
  DocumentHighlightRequest.type,
  { documentHighlightProvider: true },
  ({ params, workspace, open }) => {
    const at = locate(open.document, params.position)
    if (!at) return null
    const view = { analysis: workspace.analysis, file: workspace.link(open) }
    return highlights(view, at.section, at.offset).map(({ at: place, defines }) => ({
      range: rangeOf(open.document, place),
      kind: defines ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }))
  },
)
