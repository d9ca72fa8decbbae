import {
  type ClientCapabilities,
  type CompletionItem,
  CompletionItemKind,
  CompletionRequest,
  CompletionTriggerKind,
  InsertTextFormat,
  InsertTextMode,
} from 'vscode-languageserver'
import { withoutTicks } from '../../areas/common/markdown.ts'
import { featureAt } from '../feature.ts'
import { markup } from '../hover/markup.ts'
import { completion } from './completion.ts'
import { type Offer, withoutPlaces } from './offer.ts'
import { snippetOf } from './template.ts'

const itemKinds: Readonly<Record<Offer['kind'], CompletionItemKind>> = {
  fact: CompletionItemKind.Field,
  block: CompletionItemKind.Struct,
  word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit,
  name: CompletionItemKind.Reference,
  check: CompletionItemKind.Constant,
  file: CompletionItemKind.File,
  date: CompletionItemKind.Value,
  snippet: CompletionItemKind.Snippet,
}

/** Not the colon and the comma: a space follows them, and until the list for that is there VS Code would show theirs, of which Enter takes the first
 * whatever was typed since. */
const triggerCharacters = [' ', '.', '"', '[', '/']

export const completionFeature = featureAt(
  CompletionRequest.type,
  { completionProvider: { triggerCharacters } },
  ({ params, workspace, open, client, today, findingsOf }, { section, offset }) => {
    const asking = {
      ...workspace.viewOf(open),
      today,
      findings: () => findingsOf(open),
      paths: () => workspace.pathsFor(open),
    }
    const { triggerKind, triggerCharacter } = params.context ?? {}
    const typed = triggerKind === CompletionTriggerKind.TriggerCharacter ? triggerCharacter : undefined
    const found = completion(asking, section, offset, { typed })
    const range = found && workspace.locate(open, found.replace)?.range
    if (!range) return null
    const before = section.text[found.replace.span.start - 1] ?? ''
    // Values stand apart from their colon and comma, units from their number.
    const apart = (kind: Offer['kind']) => /[:,]/.test(before) || (kind === 'unit' && /\d/.test(before))
    const written = writer(client)
    const items = found.offers.map((offer, i): CompletionItem => {
      const { text, ...how } = written(offer)
      const stands = apart(offer.kind)
      return {
        label: offer.label,
        kind: itemKinds[offer.kind],
        ...(offer.detail !== undefined && { detail: withoutTicks(offer.detail) }),
        ...(offer.doc !== undefined && { documentation: markup(client, 'completion', offer.doc) }),
        // In the order they are offered in, whatever the letters.
        sortText: String(i).padStart(4, '0'),
        filterText: stands || offer.holdsWhole ? asTyped(found.word) : offer.label,
        ...how,
        textEdit: { range, newText: stands ? ` ${text}` : text },
      }
    })
    // An incomplete list stays in view while the server is asked again, and Enter takes from it what fitted before.
    return { isIncomplete: false, items }
  },
)

/** Fits only until more is typed. Behind a typed `M16` Enter ends the line where `M16` is offered, but would write ` M16` where
 * that is, or `lbs` for a typed `lb`. */
const asTyped = (word: string): string => word || ' '

/** How an offer is written for this editor: with places to fill in where it knows them. */
function writer(client: ClientCapabilities) {
  const snippets = client.textDocument?.completion?.completionItem?.snippetSupport === true
  return (offer: Offer): { text: string } & Pick<CompletionItem, 'insertTextFormat' | 'insertTextMode'> => {
    const places = offer.insert.some((piece) => typeof piece !== 'string')
    const text = snippets && places ? snippetOf(offer.insert) : withoutPlaces(offer)
    return {
      text,
      ...(snippets && places && { insertTextFormat: InsertTextFormat.Snippet }),
      ...(text.includes('\n') && { insertTextMode: InsertTextMode.adjustIndentation }),
    }
  }
}
