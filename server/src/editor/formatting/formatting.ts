import { DocumentFormattingRequest, type TextEdit } from 'vscode-languageserver'
import { positionOf, textOf } from '../../job/document.ts'
import { formatSections } from '../../syntax/format.ts'
import { feature } from '../feature.ts'

/** The layout of a job file is the same everywhere: the editor's own settings for it are not asked. */
export const formatting = feature(
  DocumentFormattingRequest.type,
  { documentFormattingProvider: true },
  ({ open: { document } }): TextEdit[] => {
    const text = textOf(document)
    const newText = formatSections(document.sections)
    const last = document.sections.at(-1)
    if (!last || document.refusal || newText === text) return []
    const end = positionOf(document, last, last.text.length)
    return [{ range: { start: { line: 0, character: 0 }, end }, newText }]
  },
)
