import { findUnit } from '../../quantity/units.ts'
import type { Entry, Part } from '../../syntax/tree.ts'
import type { Form, Slot } from '../../vocabulary/form.ts'
import type { Entries, WrittenPart } from './cursor-entries.ts'

/** The entry of a form that an entry of a value is written by. */
export const entryOf = ({ entries, again }: Form, entry: number): readonly Slot[] =>
  entries[again ? Math.min(entry, entries.length - 1) : entry] ?? []

/** Whether what is written so far may be of the form. */
export const fits = (form: Form, { before }: Entries): boolean =>
  before.every((parts, entry) => parts.every((part, i) => fitsSlot(part, entryOf(form, entry)[i])))

function fitsSlot({ text, type }: WrittenPart, slot: Slot | undefined): boolean {
  if (!slot) return false
  if (signOf(text) !== slot.sign) return false
  if (type === 'word' && slot.choices) return slot.choices.includes(text)
  if (type !== 'amount') return true
  return (
    isOfKind(text.slice(text.lastIndexOf(' ') + 1), slot) && (!slot.choices || slot.quantity !== undefined)
  )
}

/** Whether a unit, where it is one, is of what the slot is of. */
export function isOfKind(unit: string | undefined, { quantity }: Slot): boolean {
  const kind = unit === undefined ? undefined : findUnit(unit)?.kind
  return quantity === undefined || kind === undefined || kind === quantity
}

const signOf = (text: string): Slot['sign'] =>
  /^(±|\+\/-)/.test(text) ? '±' : /^[+\-\u2212].*\//.test(text) ? '+/-' : undefined

/** What a part of a value is, by the first form that its whole entry is written by, or else the entry up to this part. */
export function slotAt(
  forms: readonly Form[],
  entries: readonly Entry[],
  [i, j]: readonly [entry: number, part: number],
): Slot | undefined {
  const parts = entries[i]?.parts ?? []
  const ways = forms
    .map((form) => entryOf(form, i))
    .filter((slots) => slots[j] && slots.slice(0, j + 1).every((slot, k) => isWritten(slot, parts[k])))
  const whole = ways.find((slots) => parts.every((part, k) => slots[k] && isWritten(slots[k], part)))
  return (whole ?? ways[0])?.[j]
}

function isWritten(slot: Slot, part: Part | undefined): boolean {
  // What is not known yet may be either.
  if (part?.type === 'blank') return isOfKind(part.unit?.text, slot)
  if (part?.type === 'two-sided') return slot.sign === '+/-'
  if (part?.type === 'plus-minus') return slot.sign === '±'
  if (part?.type === 'amount')
    return (
      isOfKind(part.unit?.text, slot) &&
      (slot.quantity !== undefined || slot.behind !== undefined || !slot.choices)
    )
  if (part?.type !== 'word') return part?.type === 'text' && !slot.choices && slot.quantity === undefined
  return slot.choices?.includes(part.text) ?? slot.quantity === undefined
}
