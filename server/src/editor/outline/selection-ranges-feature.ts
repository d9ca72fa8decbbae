import { type SelectionRange, SelectionRangeRequest } from 'vscode-languageserver'
import { locate, positionOf, rangeOf } from '../../job/document.ts'
import { feature } from '../feature.ts'
import { selectionSpans } from './selection-ranges.ts'

export const selectionRangesFeature = feature(
  SelectionRangeRequest.type,
  { selectionRangeProvider: true },
  ({ params, open: { document } }) => {
    const last = document.sections.at(-1)
    const end = last ? positionOf(document, last, last.text.length) : { line: 0, character: 0 }
    const all: SelectionRange = { range: { start: { line: 0, character: 0 }, end } }
    return params.positions.map((position) => {
      const at = locate(document, position)
      const spans = at ? selectionSpans(at.section, at.offset) : []
      return spans.reduce(
        (parent, span) => ({ range: at ? rangeOf(document, { ...at, span }) : parent.range, parent }),
        all,
      )
    })
  },
)
