import { HoverRequest } from 'vscode-languageserver'
import { featureAt } from '../feature.ts'
import { hover } from './hover.ts'
import { markup } from './markup.ts'

export const hoverFeature = featureAt(
  HoverRequest.type,
  { hoverProvider: true },
  ({ workspace, open, client, docs, findingsOf }, { section, offset }) => {
    const view = { ...workspace.viewOf(open), docs, findings: () => findingsOf(open) }
    const found = hover(view, section, offset)
    if (!found) return null
    const range = workspace.locate(open, found.place)?.range
    return { contents: markup(client, 'hover', found.markdown), ...(range && { range }) }
  },
)
