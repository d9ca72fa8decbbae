import { code, type Markdown, md, ours, paragraphs } from '../../areas/common/markdown.ts'
import type { Section } from '../../job/model.ts'
import { type Fact, factIn } from '../../vocabulary/block.ts'
import type { Form, Slot } from '../../vocabulary/form.ts'
import { findKind } from '../../vocabulary/index.ts'
import { type CursorContext, cursorContext } from './cursor-context.ts'
import { entryOf, fits, isOfKind } from './form-fits.ts'

export interface Written {
  /** `gaps: place length, …` */
  readonly label: string
  /** Its parts, as places in the label. */
  readonly parts: readonly { readonly start: number; readonly end: number; readonly doc: Markdown }[]
  readonly doc: Markdown
}

export interface SignatureHelp {
  readonly forms: readonly Written[]
  /** The form that is being written, and which part of it. */
  readonly form: number
  readonly part: number
}

/** How the value at a place is written, part by part; undefined where it has no parts, or has them all. */
export function signatureHelp(section: Section, offset: number): SignatureHelp | undefined {
  const context = cursorContext(section, offset)
  const value = context && valueAt(context)
  const kind = findKind(context?.frames.at(-1)?.kind ?? '')
  if (!value || !kind) return undefined
  const fact = factIn(kind, value.fact)
  const forms = fact?.shape.forms
  if (!fact || !forms?.some(hasParts)) return undefined
  const part = value.number === undefined ? value.part : value.part - 1
  const slotOf = (form: Form): Slot | undefined => {
    const slot = fits(form, value) ? entryOf(form, value.entry)[part] : undefined
    return slot && (value.number === undefined || isOfKind(value.word, slot)) ? slot : undefined
  }
  const begun = (form: Form) =>
    value.word !== '' && slotOf(form)?.choices?.some((choice) => choice.startsWith(value.word))
  const active = forms.find(begun) ?? forms.find(slotOf)
  return (
    active && {
      forms: forms.map((form) => writtenAs(value.fact === kind.bare ? '' : `${value.fact}:`, fact, form)),
      form: forms.indexOf(active),
      part: placeOf(active, value.entry) + part,
    }
  )
}

type Value = CursorContext & { readonly on: 'value' }

/** A line without a name is a value as soon as it may begin. */
function valueAt(context: CursorContext): Value | undefined {
  if (context.on !== 'item') return context.on === 'value' ? context : undefined
  const bare = findKind(context.frames.at(-1)?.kind ?? '')?.bare
  return bare === undefined ? undefined : { ...context, ...context.line, on: 'value', fact: bare }
}

const hasParts = ({ entries, again }: Form): boolean => entries.flat().length > 1 || again === true

/** Number of parts before those of an entry. */
const placeOf = ({ entries, again }: Form, entry: number): number =>
  entries.slice(0, again ? Math.min(entry, entries.length - 1) : entry).flat().length

/** `named`: what stands before the value. */
function writtenAs(named: string, { doc, example }: Fact, { entries, again }: Form): Written {
  const parts: Written['parts'][number][] = []
  let label = named
  for (const [i, entry] of entries.entries()) {
    if (i > 0) label += ','
    for (const slot of entry) {
      if (label !== '') label += ' '
      const start = label.length
      label += slot.label
      parts.push({ start, end: label.length, doc: ours(slot.doc) })
    }
  }
  return {
    label: again ? `${label}, …` : label,
    parts,
    doc: paragraphs(ours(doc), md`For example ${code(named === '' ? example : `${named} ${example}`)}`),
  }
}
