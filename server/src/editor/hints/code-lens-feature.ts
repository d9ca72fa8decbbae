import { type CodeLens, CodeLensRequest, type TextDocumentPositionParams } from 'vscode-languageserver'
import { rangeOf } from '../../job/document.ts'
import { harmless } from '../../syntax/harmless.ts'
import { planCommand } from '../client-requests.ts'
import { feature } from '../feature.ts'
import { sectionBySection } from '../transport/section-by-section.ts'
import { codeLenses } from './code-lens.ts'

/** Each leads to the plan: an editor that shows lenses takes a command with every one. */
export const codeLensFeature = feature(CodeLensRequest.type, { codeLensProvider: {} }, (asked) => {
  const { document, uri } = asked.open
  return sectionBySection(asked, document.sections, (view, section) =>
    codeLenses(view, section).map(({ span, words }): CodeLens => {
      const range = rangeOf(document, { section, span })
      const place: TextDocumentPositionParams = { textDocument: { uri }, position: range.start }
      return { range, command: { title: harmless(words), command: planCommand, arguments: [place] } }
    }),
  )
})
