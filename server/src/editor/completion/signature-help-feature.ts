import { SignatureHelpRequest } from 'vscode-languageserver'
import type { Markdown } from '../../areas/common/markdown.ts'
import { featureAt } from '../feature.ts'
import { markup } from '../hover/markup.ts'
import { signatureHelp } from './signature-help.ts'

export const signatureHelpFeature = featureAt(
  SignatureHelpRequest.type,
  { signatureHelpProvider: { triggerCharacters: [':', ' ', ','] } },
  ({ client }, { section, offset }) => {
    const found = signatureHelp(section, offset)
    if (!found) return null
    const shown = (markdown: Markdown) => markup(client, 'signatureHelp', markdown)
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
