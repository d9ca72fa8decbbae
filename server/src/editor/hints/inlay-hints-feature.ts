import { type InlayHint, InlayHintRequest } from 'vscode-languageserver'
import { locate, positionOf } from '../../job/document.ts'
import { feature } from '../feature.ts'
import { sectionBySection } from '../transport/section-by-section.ts'
import { inlayHints } from './inlay-hints.ts'

export const inlayHintsFeature = feature(InlayHintRequest.type, { inlayHintProvider: true }, (asked) => {
  const { params, open, settings } = asked
  const { document } = open
  const [first, last] = [params.range.start, params.range.end].map((position) => locate(document, position))
  if (!first || !last) return []
  const { sections } = document
  const within = sections.slice(sections.indexOf(first.section), sections.indexOf(last.section) + 1)
  return sectionBySection(asked, within, (view, section) =>
    inlayHints(view, section, {
      settings: settings.inlayHints,
      ...(section === first.section && { from: first.offset }),
      ...(section === last.section && { to: last.offset }),
    }).map(
      ({ at, words, tooltip }): InlayHint => ({
        position: positionOf(document, section, at),
        label: words,
        tooltip,
        paddingLeft: true,
      }),
    ),
  )
})
