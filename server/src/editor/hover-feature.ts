import { HoverRequest } from 'vscode-languageserver'
import { locate } from '../job/document.ts'
import { feature } from './feature.ts'
import { hover } from './hover.ts'
import { markup } from './markup.ts'

export const hoverFeature = feature(
  HoverRequest.type,
  { hoverProvider: true },
  ({ params, workspace, open, client, docs, findingsOf }) => {
    const at = locate(open.document, params.position)
    const found =
      at &&
      hover(
        { analysis: workspace.analysis, file: workspace.link(open), docs, findings: () => findingsOf(open) },
        at.section,
        at.offset,
      )
    if (!found) return null
    const range = workspace.locate(open, found.place)?.range
    return { contents: markup(client, 'hover', found.markdown), ...(range && { range }) }
  },
)
