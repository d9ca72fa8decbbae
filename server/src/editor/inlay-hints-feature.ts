import { type InlayHint, InlayHintRequest } from 'vscode-languageserver'
import { locate, positionOf } from '../job/document.ts'
import { feature } from './feature.ts'
import { inlayHints } from './inlay-hints.ts'

export const inlayHintsFeature = feature(
  InlayHintRequest.type,
  { inlayHintProvider: true },
  ({ params: { range }, workspace, open, settings }): InlayHint[] => {
    const { document } = open
    const [first, last] = [range.start, range.end].map((position) => locate(document, position))
    if (!first || !last) return []
    const view = { analysis: workspace.analysis, file: workspace.link(open) }
    const { sections } = document
    const asked = sections.slice(sections.indexOf(first.section), sections.indexOf(last.section) + 1)
    return asked.flatMap((section) =>
      inlayHints(view, section, {
        sorts: settings.inlayHints,
        ...(section === first.section && { from: first.offset }),
        ...(section === last.section && { to: last.offset }),
      }).map(({ at, words, tooltip }) => ({
        position: positionOf(document, section, at),
        label: words,
        tooltip,
        paddingLeft: true,
      })),
    )
  },
)
