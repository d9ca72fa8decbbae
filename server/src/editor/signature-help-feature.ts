import { MarkupKind, SignatureHelpRequest } from 'vscode-languageserver'
import { locate } from '../job/document.ts'
import { feature } from './feature.ts'
import { signatureHelp } from './signature-help.ts'

export const signatureHelpFeature = feature(
  SignatureHelpRequest.type,
  { signatureHelpProvider: { triggerCharacters: [':', ' ', ','] } },
  ({ params, open }) => {
    const at = locate(open.document, params.position)
    const found = at && signatureHelp(at.section, at.offset)
    if (!found) return null
    const markdown = (value: string) => ({ kind: MarkupKind.Markdown, value })
    return {
      signatures: found.forms.map(({ label, parts, doc }) => ({
        label,
        documentation: markdown(doc),
        parameters: parts.map(({ start, end, doc: part }) => ({
          label: [start, end] as [number, number],
          documentation: markdown(part),
        })),
      })),
      activeSignature: found.form,
      activeParameter: found.part,
    }
  },
)
