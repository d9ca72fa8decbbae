import { threadNear } from '../../areas/alignment/plans/move-effect.ts'
import { ours, prose } from '../../areas/common/markdown.ts'
import { blockAt } from '../../areas/fixes.ts'
import { hasSection } from '../../job/document.ts'
import { kinds } from '../../quantity/kinds.ts'
import { readQuantity } from '../../quantity/quantity.ts'
import { findUnit, nameBehind, type Unit, unitSystemOf, unitsOf } from '../../quantity/units.ts'
import { lookupFrom } from '../../store/store.ts'
import { type Fact, factIn } from '../../vocabulary/block.ts'
import type { Form, Slot } from '../../vocabulary/form.ts'
import { findKind } from '../../vocabulary/index.ts'
import type { Shape } from '../../vocabulary/shape.ts'
import { formatValue } from '../hover/format-value.ts'
import { unitMarkdown } from '../hover/words.ts'
import type { CursorContext } from './cursor-context.ts'
import type { Entries } from './cursor-entries.ts'
import { entryOf, fits } from './form-fits.ts'
import {
  blocksBehind,
  blocksInScope,
  factsInScope,
  likeInScope,
  type NamedBlock,
  terminalsFor,
  topBlocks,
} from './names-in-scope.ts'
import { type CompletionContext, type Offer, word } from './offer.ts'
import { standardOf } from './standard-values.ts'

export interface Offered {
  readonly offers: readonly Offer[]
  /** Whether something has to stand there. */
  readonly expected: boolean
  /** Whether the value may end here. */
  readonly ended: boolean
}

const over: Offered = { offers: [], expected: false, ended: true }

/** What may stand in a value at the cursor. */
export function valueOffers(
  here: CompletionContext,
  value: CursorContext & { readonly on: 'value' },
): Offered {
  const { frame, block } = here
  const kind = findKind(frame?.kind ?? '')
  if (!kind) return over
  const fact = factIn(kind, value.fact)
  const kinds = fact?.shape.refersTo
  const names =
    value.fact === 'like'
      ? block && named(here, likeInScope(here, block), [block.kind])
      : kinds
        ? named(here, blocksInScope(here, block, kinds), kinds)
        : kind.heading === 'check' && value.fact === 'on'
          ? unique([
              ...foundAt(here),
              ...named(
                here,
                topBlocks(here).filter((top) => top.kind !== kind.kind),
              ),
            ])
          : undefined
  if (names) return value.entry === 0 && value.part === 0 ? must(names) : over
  return fact ? slotOffers(here, fact, value) : over
}

/** Where the check that a concession is about finds something. */
function foundAt({ analysis, file, block, context, findings }: CompletionContext): readonly Offer[] {
  return findings()
    .filter(({ check, at }) => check === block?.about?.text && hasSection(file.document, at.section))
    .flatMap(({ at }) => blockAt(analysis.bound(file, at.section).blocks, at) ?? [])
    .filter(({ path }) => path.startsWith(context.word))
    .map(({ path }) => word(path, { kind: 'name', detail: 'the block that the finding is about' }))
}

const must = (offers: readonly Offer[]): Offered => ({ offers, expected: true, ended: false })

/** Blocks by their names; behind a dot, those of the kinds in the block that stands before it. */
function named(
  here: CompletionContext,
  candidates: readonly NamedBlock[],
  kinds?: readonly string[],
): readonly Offer[] {
  const { block, scope } = here
  const holder = holderOf(here)
  const inside = holder !== undefined && block ? blocksBehind(block, scope, holder) : []
  const found =
    holder === undefined ? candidates : inside.filter(({ kind }) => !kinds || kinds.includes(kind))
  return found.map(({ path, kind }) => word(path, { kind: 'name', detail: kind }))
}

const holderOf = ({ context: { word: written } }: CompletionContext): string | undefined => {
  const dot = written.lastIndexOf('.')
  return dot < 0 ? undefined : written.slice(0, dot)
}

/** The ways to write a value, declared or the plain one. */
const formsOf = ({ words, forms, choices, quantity }: Shape<unknown>): readonly Form[] =>
  forms ?? [
    { entries: [[{ label: words, doc: '', ...(choices && { choices }), ...(quantity && { quantity }) }]] },
  ]

function slotOffers(
  here: CompletionContext,
  fact: Fact,
  value: CursorContext & { readonly on: 'value' },
): Offered {
  const all = formsOf(fact.shape)
  const forms = all.filter((form) => fits(form, value))
  const fitting = forms.length > 0 ? forms : all
  const slots = (part: number) => fitting.flatMap((form) => entryOf(form, value.entry)[part] ?? [])
  if (value.number !== undefined) {
    const of = slots(value.part - 1)
    const plain = of.every(({ quantity, behind }) => !behind && (!quantity || quantity === 'ratio'))
    const unit = findUnit(value.word)
    return {
      offers: unitOffers(here, fact, likeliest(of, here), value.number),
      expected: !plain,
      ended: unit ? !isBeyond(fact, value.number, unit) : plain,
    }
  }
  const at = slots(value.part)
  const begins = value.entry === 0 && value.part === 0 && !value.joined
  const offers = [
    ...at.flatMap((slot) => slotWords(here, slot, value)),
    ...(begins ? standardValues(here, value.fact) : []),
  ]
  const amounts = at.find(({ quantity, choices, sign }) => quantity && !choices && (!sign || value.joined))
  const facts = amounts ? amountOffers(here, amounts, value.fact) : []
  return {
    offers: unique([...offers, ...facts]),
    expected:
      at.length > 0 && at.every(({ optional, quantity, choices }) => !optional && (!quantity || choices)),
    ended: !value.joined && at.every(({ optional }) => optional),
  }
}

function standardValues({ frame, scope }: CompletionContext, fact: string): readonly Offer[] {
  const standard = standardOf(frame?.kind ?? '', fact)
  return (standard?.values[scope.system()] ?? []).map((text) =>
    word(text, { doc: prose(`Source: ${standard?.source}`), holdsWhole: /^\d/.test(text) }),
  )
}

const unique = (offers: readonly Offer[]): readonly Offer[] => [
  ...new Map(offers.map((offer) => [offer.label, offer])).values(),
]

function slotWords(
  { today, block, scope, context: { word: written } }: CompletionContext,
  { choices = [], doc, day, terminalsOf }: Slot,
  { before, behind, entry, part }: Entries,
): readonly Offer[] {
  if (day) return [word(today, { kind: 'date', detail: 'today' })]
  const others = [...before.slice(0, entry), ...behind.slice(1)]
  const used = new Set(others.map((parts) => parts[part]?.text))
  const left = (text: string) => text === written || !used.has(text) || part > 0
  if (terminalsOf)
    return block
      ? terminalsFor(block, scope, terminalsOf)
          .filter((name) => name === written || !used.has(name))
          .map((name) => word(name, { kind: 'name', detail: `${terminalsOf} terminal` }))
      : []
  return choices.filter(left).map((text) => word(text, doc === '' ? {} : { doc: ours(doc) }))
}

/** A foot without nuts on a thread is not moved by turns of them. */
function likeliest(slots: readonly Slot[], here: CompletionContext): readonly Slot[] {
  const { block } = here
  const isTurn = ({ quantity }: Slot) => quantity === 'angle'
  if (!slots.some(isTurn) || (block && threadNear(lookupFrom(block, here)))) return slots
  return [...slots.filter((slot) => !isTurn(slot)), ...slots.filter(isTurn)]
}

/** Units that fit behind a number: those of the job's system first, of them the one of the example or the usual one. */
function unitOffers(
  { scope }: CompletionContext,
  fact: Fact,
  slots: readonly Slot[],
  number: string,
): readonly Offer[] {
  const behind = slots.flatMap((slot) => slot.behind ?? []).map((text) => word(text))
  const units = slots
    .flatMap(({ quantity, units: named }) => {
      if (named) return named.flatMap((name) => findUnit(name) ?? [])
      if (!quantity) return []
      const [system, usual] = [scope.system(), fact.example.split(/[\s,]+/)]
      const shown = kinds[quantity].shown[system]
      const first = system === 'inch' ? [shown, ...usual] : [...usual, shown]
      const rank = ({ name }: Unit) => (first.indexOf(name) + first.length + 1) % (first.length + 1)
      // Those in which the number is more than there can be stand last: it may yet become a fraction.
      const beyond = (unit: Unit): number => Number(isBeyond(fact, number, unit))
      // Volts are the same everywhere; lengths of the job's own system come before those of the other.
      const { metric, inch } = kinds[quantity].shown
      const foreign = (unit: Unit): number => Number(metric !== inch && unitSystemOf(unit) !== system)
      return unitsOf(quantity).toSorted(
        (a, b) => beyond(a) - beyond(b) || foreign(a) - foreign(b) || rank(a) - rank(b),
      )
    })
    .filter((unit) => !unit.named || unit.named(number) !== undefined)
  const labels = units.map((unit) => nameBehind(number, unit))
  const otherSpellings = units
    .flatMap(({ name, aliases }) => [name, ...aliases])
    .filter((spelling) => !labels.includes(spelling))
  return unique([
    ...behind,
    ...units.map((unit, i) => {
      const label = labels[i] ?? unit.name
      const holdsWhole = otherSpellings.some((spelling) => hasLettersOf(label, spelling))
      return word(label, { kind: 'unit', detail: unit.doc, doc: unitMarkdown(unit), holdsWhole })
    }),
  ])
}

/** Whether a client that looks for the letters in their order finds them. */
function hasLettersOf(label: string, letters: string): boolean {
  let at = -1
  return [...letters.toLowerCase()].every((letter) => {
    at = label.toLowerCase().indexOf(letter, at + 1)
    return at >= 0
  })
}

/** Whether the number in this unit is more than the fact can be. */
function isBeyond({ shape }: Fact, number: string, { name, kind }: Unit): boolean {
  const high = (shape.quantity === kind && shape.allowed?.high) || Number.POSITIVE_INFINITY
  const read = readQuantity(number, name)
  return read.ok && read.value.si > high
}

/** Facts that an arithmetic may take from elsewhere. */
function amountOffers(here: CompletionContext, { quantity }: Slot, but: string): readonly Offer[] {
  const { block, scope } = here
  if (!block || !quantity) return []
  const holder = holderOf(here)
  const facts = factsInScope(block, scope, { kind: quantity, holder, but })
  const inside = holder === undefined ? [] : blocksBehind(block, scope, holder)
  return [
    ...facts.flatMap(({ path, block: owner, name }): Offer[] => {
      const value = owner.facts.get(name)
      const shape = findKind(owner.kind)?.facts[name]?.shape
      return value && shape
        ? [word(path, { kind: 'name', detail: formatValue(value, shape, scope.system()) })]
        : []
    }),
    ...inside.map(({ path, kind }) => word(path, { kind: 'name', detail: kind })),
  ]
}
