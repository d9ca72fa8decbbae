import { SignatureHelpRequest } from 'vscode-languageserver'
import { locate } from '../job/document.ts'
import { feature } from './feature.ts'
import { markup } from './markup.ts'
import { signatureHelp } from './signature-help.ts'

export const signatureHelpFeature = feature(
  SignatureHelpRequest.type,
  { signatureHelpProvider: { triggerCharacters: [':', ' ', ','] } },
  ({ params, open, client }) => {
    const at = locate(open.document, params.position)
    const found = at && signatureHelp(at.section, at.offset)
    if (!found) return null
    const shown = (markdown: string) => markup(client, 'signatureHelp', markdown)
    return {
      signatures: found.forms.map(({ label, parts, doc }) => ({
        label,
        documentation: shown(doc),
        parameters: parts.map(({ start, end, doc: part }) => ({
          label: [start, end] as [number, number],
          documentation: shown(part),
        })),
      })),
      activeSignature: found.form,
      activeParameter: found.part,
    }
  },
)
