import { DocumentOnTypeFormattingRequest, type TextEdit } from 'vscode-languageserver'
import { locate, rangeOf } from '../../job/document.ts'
import { indentLine } from '../../syntax/format-lines.ts'
import { feature } from '../feature.ts'

/** The indent of a line that has just been begun, or that a closing brace has just been typed at the head of. */
export const formattingOnTypeFeature = feature(
  DocumentOnTypeFormattingRequest.type,
  { documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] } },
  ({ open: { document }, params: { position, ch } }): TextEdit[] => {
    const at = locate(document, position)
    if (!at) return []
    const { section, offset } = at
    // A brace behind something else moves nothing.
    if (ch === '}' && !/(?:^|[\r\n])[ \t]*\}$/.test(section.text.slice(0, offset))) return []
    const before = document.sections[document.sections.indexOf(section) - 1]
    return indentLine(section, offset, before).map(({ newText, ...place }) => ({
      range: rangeOf(document, place),
      newText,
    }))
  },
)
