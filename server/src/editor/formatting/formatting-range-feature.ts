import { DocumentRangeFormattingRequest, type TextEdit } from 'vscode-languageserver'
import { locate, rangeOf } from '../../job/document.ts'
import { formatLines } from '../../syntax/format-lines.ts'
import { feature } from '../feature.ts'

/** The lines of a selection laid out as those of the whole text would be. */
export const formattingRangeFeature = feature(
  DocumentRangeFormattingRequest.type,
  { documentRangeFormattingProvider: true },
  ({ open: { document }, params: { range } }): TextEdit[] => {
    const [from, to] = [locate(document, range.start), locate(document, range.end)]
    if (!from || !to) return []
    const [first, last] = [from, to].map(({ section }) => document.sections.indexOf(section)) as [
      number,
      number,
    ]
    const edits = formatLines(document.sections.slice(first, last + 1), {
      from: from.offset,
      to: to.offset,
      before: document.sections[first - 1],
      next: document.sections[last + 1],
    })
    return edits.map(({ newText, ...place }) => ({ range: rangeOf(document, place), newText }))
  },
)
