import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import { kinds, type UnitSystem } from '../../quantity/kinds.ts'
import { findUnit } from '../../quantity/units.ts'
import { parseSection } from '../../syntax/parser.ts'
import type { Entry, Part } from '../../syntax/tree.ts'
import type { Fact } from '../../vocabulary/block.ts'
import { slotAt } from './form-fits.ts'
import type { Template } from './template.ts'

type Piece = Template[number]

/** What the value of a snippet takes from where it goes. */
export interface ValueSite {
  readonly today: string
  readonly system: UnitSystem
  /** Every place is a `?` to begin with: nothing is said until somebody fills it in. */
  readonly blanks?: true
  /** Names of the blocks of these kinds that are in scope. */
  readonly refer: (kinds: readonly string[]) => readonly string[]
  /** Marks of the phase terminals of the two. */
  readonly terminals: Readonly<Record<'controller' | 'motor', readonly string[]>>
}

/** A value as it is written in an example. */
interface Written {
  readonly entries: readonly Entry[]
  readonly text: string
}

/** The example of a fact, read once. */
const exampleOf = memoizeByIdentity(({ example }: Fact): Written => {
  const text = `x { x: ${example} }`
  const [block] = parseSection(text).tree.items
  const [item] = block?.type === 'block' ? block.items : []
  return { entries: item && item.type !== 'block' ? item.entries : [], text }
})

/** A value with a place for all that only the person knows: the form of the fact's example, its units kept, none of its figures. What a place
 * says cannot be read as a value, so that one that is passed over is found. `used`: names referred to already. */
export function valuePieces(name: string, fact: Fact, around: ValueAround): readonly Piece[] {
  const { system, blanks } = around.site
  if (!blanks) return spokenPieces(name, fact, around)
  // How far the job has got, and how it is shown, is known.
  if (name === 'status') return spokenPieces(name, fact, around)
  if (name === 'show-in') return [choiceOf(fact.shape.choices ?? [], system)]
  return spokenPieces(name, fact, around).map((piece) =>
    typeof piece === 'string'
      ? piece
      : { value: '?', ...(piece.choices && { choices: ['?', ...piece.choices] }) },
  )
}

interface ValueAround {
  readonly site: ValueSite
  readonly used: Set<string>
  readonly written?: Written
}

function spokenPieces(name: string, fact: Fact, { site, used, written }: ValueAround): readonly Piece[] {
  const { shape } = fact
  if (shape.refersTo) return [referring(shape.refersTo, fact, { site, used })]
  if (shape.choices && !shape.quantity) return [choiceOf(shape.choices, fact.example)]
  const { controller, motor } = site.terminals
  if (shape.forms?.[0]?.entries[0]?.[0]?.terminalsOf && controller.length > 0 && motor.length > 0)
    return controller.flatMap((mark, i) => [`${i > 0 ? ', ' : ''}${mark} to `, choiceOf(motor, '')])
  const { entries, text } = shaped(fact, written ?? exampleOf(fact), site)
  return entries.flatMap((entry, i) => [
    ...(i > 0 ? [', '] : []),
    ...entry.parts.flatMap((part, j) => [
      ...(j > 0 ? [' '] : []),
      ...placesIn(part, { name, fact, entries, at: [i, j], text, site }),
    ]),
  ])
}

function referring(
  kinds: readonly string[],
  { example }: Fact,
  { site, used }: { readonly site: ValueSite; readonly used: Set<string> },
): Piece {
  const left = site.refer(kinds).filter((name) => !used.has(name))
  const first = left.includes(example) ? example : left[0]
  if (first === undefined) return { value: `the name of a ${kinds.join(' or ')}` }
  used.add(first)
  return choiceOf(site.refer(kinds), first)
}

/** `first` before the others, where it is one of them. */
function choiceOf(choices: readonly string[], first: string): Piece {
  const ordered = choices.toSorted((a, b) => Number(b === first) - Number(a === first))
  return { value: ordered[0] ?? '', choices: ordered }
}

/** Of an example what everybody has to say: of a list without words of its own as many entries as it has to have, of a size no tolerance class. */
function shaped({ shape: { forms = [] } }: Fact, { entries, text }: Written, { blanks }: ValueSite): Written {
  const [first] = entries
  if (!first) return { entries, text }
  // A `?` has no tolerance.
  const amounts = first.parts.filter(({ type }) => type !== 'two-sided')
  if (blanks && amounts.length < first.parts.length) return { entries: [{ ...first, parts: amounts }], text }
  const slot = slotAt(forms, entries, [0, 0])
  if (forms[0]?.again && !slot?.choices && !slot?.terminalsOf)
    return { entries: entries.slice(0, forms[0].entries.length), text }
  const { parts } = first
  const isClass = slotAt(forms, entries, [0, parts.length - 1])?.optional
  return isClass && entries.length === 1
    ? { entries: [{ ...first, parts: parts.slice(0, -1) }], text }
    : { entries, text }
}

interface ValueContext {
  readonly name: string
  readonly fact: Fact
  readonly entries: readonly Entry[]
  readonly at: readonly [entry: number, part: number]
  readonly text: string
  readonly site: ValueSite
}

function placesIn(part: Part, around: ValueContext): readonly Piece[] {
  const place = (value: string): Piece => ({ value })
  const unit = (of: Part) => ('unit' in of && of.unit ? [` ${unitIn(of.unit.text, around.site.system)}`] : [])
  switch (part.type) {
    case 'amount':
      return [place(amountName(around)), ...unit(part)]
    case 'range':
      return [place('least'), '..', place('most'), ...unit(part.high)]
    case 'two-sided':
      return ['+', place('up'), '/-', place('down'), ...unit(part)]
    case 'negated':
      return placesIn(part.of, around)
    case 'word':
      // Which side a thing is on nobody else can know.
      if (around.entries.length === 1 && isOneOfFew(around))
        return [choiceOf(around.fact.shape.choices ?? [], part.text)]
      return [isFixed(part.text, around) ? part.text : place(wordName(around))]
    case 'text':
      // Within quotes nothing would be wrong.
      return [place(`${spaced(around.name)}, in quotes`)]
    case 'date':
      return [place(around.site.today)]
    default:
      return [around.text.slice(part.span.start, part.span.end)]
  }
}

/** The unit as the job has its own. Sections of conductors are metric or a gauge wherever. */
function unitIn(written: string, system: UnitSystem): string {
  const unit = findUnit(written)
  return unit && system === 'inch' && unit.kind !== 'area' ? kinds[unit.kind].shown.inch : written
}

const spaced = (name: string): string => name.replaceAll('-', ' ')

const isAmount = ({ type }: Part): boolean => type === 'amount'

/** `gaps at top`, `free length`; of several in one value what each is. */
function amountName({ name, fact: { shape }, entries, at: [i, j] }: ValueContext): string {
  const before = entries[i]?.parts[j - 1]
  if (before?.type === 'word' && entries.length > 1 && shape.choices?.includes(before.text))
    return `${spaced(name)} at ${before.text}`
  const slot = slotAt(shape.forms ?? [], entries, [i, j])
  const several = entries.flatMap(({ parts }) => parts.filter(isAmount)).length > 1
  return slot && several ? slot.label.replace(/ x$/, '') : spaced(name)
}

/** Whether a word belongs to the form: a place, `max`, `to`. */
function isFixed(word: string, { fact: { shape }, entries, at }: ValueContext): boolean {
  const slot = slotAt(shape.forms ?? [], entries, at)
  return (shape.choices ?? slot?.choices)?.includes(word) ?? false
}

/** Whether any of the fact's words may stand there. */
const isOneOfFew = ({ fact: { shape }, entries, at }: ValueContext): boolean =>
  shape.choices !== undefined && slotAt(shape.forms ?? [], entries, at)?.choices === shape.choices

/** What a word stands for, in words: together they are none. */
function wordName({ fact: { doc, shape }, entries, at }: ValueContext): string {
  const slot = slotAt(shape.forms ?? [], entries, at)
  if (slot) return slot.terminalsOf ? `${slot.terminalsOf} terminal` : `the ${slot.label}`
  const [clause = ''] = doc.split(/[.:,;(]/, 1)
  const words = clause.replace(/^./, (letter) => letter.toLowerCase())
  const [number] = at
  if (entries.length > 1) return `name ${number + 1}`
  return words.includes(' ') ? words : `the ${words}`
}
