import type { Band } from '../quantity/band.ts'
import { fitBand, fitClasses } from '../quantity/fits.ts'
import { formatSi } from '../quantity/format.ts'
import { type Kind, kinds, type UnitSystem } from '../quantity/kinds.ts'
import { unitOfMark } from '../quantity/quantity.ts'
import { findUnit } from '../quantity/units.ts'
import type { Entry, Part, Span } from '../syntax/tree.ts'
import { closestMatch } from './closest-match.ts'
import { bandForms, type Form, sizedForms, upperForms } from './form.ts'
import { type Allowed, allowedBy, formatLimits, type Limits, within } from './limits.ts'
import type { Reader } from './reader.ts'

/** How a fact's value is written, read and bounded. `T` is what the floors above get: SI numbers, words, lists of them. */
export interface Shape<T> {
  /** What is expected, for messages and the reference: "a length". */
  readonly words: string
  /** Reads the value, or reports what is wrong and gives undefined. Never called without entries. */
  readonly read: (entries: readonly Entry[], reader: Reader) => T | undefined
  /** Kind of the amounts in it. */
  readonly quantity?: Kind
  /** The words it may be, where it is one of a few. */
  readonly choices?: readonly string[]
  /** Kinds of block it may name. */
  readonly refersTo?: readonly string[]
  /** The ways to write it, where it has several parts. */
  readonly forms?: readonly Form[]
  /** A ratio may be written with a colon: `2.5:1`. */
  readonly mayBeRatio?: true
  /** Texts in quotes may be in it. */
  readonly mayQuote?: true
  /** What its amounts may be, SI: `read` refuses all others. */
  readonly allowed?: Allowed
}

/** What the shape allows, for people: `above 0 mm, at most 2 m`. Undefined where it has no limits. */
export function formatAllowed(
  { allowed, quantity }: Shape<unknown>,
  system?: UnitSystem,
): string | undefined {
  return allowed && quantity && formatLimits(allowed, (si) => formatSi(si, quantity, system))
}

/** Where several things stand in one value, each keeps its place. */
export type Placed<T> = T & { readonly span: Span }

const spanOf = (entries: readonly Entry[]): Span => ({
  start: entries[0]?.span.start ?? 0,
  end: entries.at(-1)?.span.end ?? 0,
})

export function notThis(
  entries: readonly Entry[],
  reader: Reader,
  expected: string,
  near?: string,
): undefined {
  reader.problem(spanOf(entries), { type: 'not-this-value', expected, ...(near && { nearest: near }) })
  return undefined
}

/** The parts of a value that must be one entry of at most `most` parts. */
function single(
  entries: readonly Entry[],
  reader: Reader,
  expected: string,
  most = 1,
): readonly Part[] | undefined {
  const parts = entries[0]?.parts
  if (entries.length !== 1 || !parts || parts.length > most)
    return notThis(entries, reader, expected, entries.length === 1 && parts ? added(parts) : undefined)
  return parts
}

/** `5 ft 6 in` as `5 ft + 6 in`: amounts of one kind in units of their own, one after the other. */
function added(parts: readonly Part[]): string | undefined {
  const written = parts.flatMap((part) =>
    part.type === 'amount' && part.unit
      ? [{ number: part.number, unit: unitOfMark(part.unit.text) ?? part.unit.text }]
      : [],
  )
  const known = new Set(written.map(({ unit }) => findUnit(unit)))
  const sameKind = new Set([...known].map((unit) => unit?.kind)).size === 1 && !known.has(undefined)
  return written.length === parts.length && known.size === parts.length && sameKind
    ? written.map(({ number, unit }) => `${number} ${unit}`).join(' + ')
    : undefined
}

/** SI values of parts that may share a unit; a unit of the wrong kind is reported once, where it stands. */
function amounts(parts: readonly Part[], kind: Kind, reader: Reader): readonly (number | undefined)[] {
  const holder = parts.find((part) => part.type === 'amount' && part.unit)
  return holder && reader.amount(holder, kind) === undefined ? [] : reader.amounts(parts, kind)
}

/** One amount of a kind: `420 mm`. */
export const amount = (kind: Kind, limits: Limits): Shape<number> => ({
  words: kinds[kind].words,
  quantity: kind,
  allowed: allowedBy(limits),
  read: (entries, reader) => {
    const part = single(entries, reader, kinds[kind].words)?.[0]
    return part && within(reader.amount(part, kind), limits, { span: part.span, parts: [part], kind }, reader)
  },
})

/** A count: a whole number without unit. */
export const count = (limits: Limits = { min: 1, max: 1000 }): Shape<number> => ({
  words: 'a whole number',
  quantity: 'ratio',
  forms: [{ entries: [[{ label: 'number', doc: 'A whole number.' }]] }],
  allowed: allowedBy(limits),
  read: (entries, reader) => {
    const part = single(entries, reader, 'a whole number')?.[0]
    const value = part && reader.amount(part, 'ratio')
    if (!part || value === undefined) return undefined
    if (!Number.isInteger(value)) return notThis(entries, reader, 'a whole number')
    return within(value, limits, { span: part.span, parts: [part], kind: 'ratio' }, reader)
  },
})

/** A nominal size with the limits its tolerance gives: `35 mm h9`, `35 mm ± 0.02 mm`, `26 mm +3/-2 mm`, or plain `35 mm`. */
export interface Sized extends Band {
  readonly nominal: number
}

export const sized = (kind: Kind, limits: Limits): Shape<Sized> => ({
  words: `${kinds[kind].words}, with a tolerance if it has one`,
  quantity: kind,
  allowed: allowedBy(limits),
  forms: sizedForms(kind, kind === 'length' ? fitClasses : []),
  read: (entries, reader) => {
    const parts = single(entries, reader, `${kinds[kind].words}, with a tolerance if it has one`, 2)
    const size = parts && readSized(parts, entries, reader, kind)
    return size && allWithin(size, limits, entries, kind, reader)
  },
})

/** The limits and the size between them, where each is within what is allowed. */
function allWithin<T extends Band>(
  size: T,
  limits: Limits,
  entries: readonly Entry[],
  kind: Kind,
  reader: Reader,
): T | undefined {
  const written = { span: spanOf(entries), parts: entries.flatMap((entry) => entry.parts), kind }
  const ends = [size.nominal, size.low, size.high].filter((si) => si !== undefined)
  return ends.every((si) => within(si, limits, written, reader) !== undefined) ? size : undefined
}

function readSized(
  parts: readonly Part[],
  entries: readonly Entry[],
  reader: Reader,
  kind: Kind,
): Sized | undefined {
  const [first, second] = parts
  if (!first) return undefined
  if (second?.type === 'plus-minus') {
    const [nominal, read] = amounts([first, second.by], kind, reader)
    // Of a tolerance below zero nobody knows whether its sign or its figure is wrong.
    const by = within(read, { min: 0 }, { span: second.by.span, parts: [first, second.by], kind }, reader)
    return nominal === undefined || by === undefined
      ? undefined
      : { nominal, low: nominal - by, high: nominal + by }
  }
  if (second?.type === 'two-sided') {
    const unitHolder: Part =
      second.unit && first.type === 'amount' && !first.unit ? { ...first, unit: second.unit } : first
    const nominal = reader.amount(unitHolder, kind)
    // Both sides have the one unit: what is wrong with it is reported once.
    const one: Part | undefined = second.unit && {
      type: 'amount',
      number: '1',
      unit: second.unit,
      span: second.span,
    }
    if (nominal === undefined || (one && reader.amount(one, kind) === undefined)) return undefined
    const sides = reader.sides(second, kind, first)
    return !sides ? undefined : { nominal, low: nominal - sides[1], high: nominal + sides[0] }
  }
  const nominal = reader.amount(first, kind)
  if (nominal === undefined || !second) return nominal === undefined ? undefined : { nominal }
  if (second.type !== 'word')
    return notThis(entries, reader, `${kinds[kind].words} and its tolerance`, added([first, second]))
  const band = kind === 'length' ? fitBand(nominal, second.text) : undefined
  if (!band) reader.problem(second.span, { type: 'unknown-fit', text: second.text })
  return { ...band, nominal }
}

/** Limits: `84..108 V`, `max 0.10 mm`, `min 4 mm`, `26 mm +3/-2 mm`, `26 mm ± 2 mm`. A plain amount is its own limits. */
export const band = (kind: Kind, limits: Limits): Shape<Band> => ({
  words: `limits of ${kinds[kind].words.replace(/^an? /, '')}: \`a..b\`, \`max a\`, \`min a\` or \`a +b/-c\``,
  quantity: kind,
  allowed: allowedBy(limits),
  forms: bandForms(kind),
  read: (entries, reader) => {
    const read = readBand(entries, reader, kind)
    return read && allWithin(read, limits, entries, kind, reader)
  },
})

/** What is missing in limits that need both ends. */
export function endMissing({ low, high }: Band): string | undefined {
  if (low === undefined) return 'low end'
  return high === undefined ? 'high end' : undefined
}

function readBand(entries: readonly Entry[], reader: Reader, kind: Kind): Band | undefined {
  const words = `limits of ${kinds[kind].words.replace(/^an? /, '')}`
  const parts = single(entries, reader, words, 2)
  const [first, second] = parts ?? []
  if (!parts || !first) return undefined
  const meant = rangeMeant(parts)
  if (meant) return notThis(entries, reader, words, meant)
  if (first.type === 'word' && (first.text === 'max' || first.text === 'min')) {
    const value = second && reader.amount(second, kind)
    if (!second) return notThis(entries, reader, `${first.text} and ${kinds[kind].words}`)
    return value === undefined ? undefined : first.text === 'max' ? { high: value } : { low: value }
  }
  if (first.type === 'range') {
    if (second) return notThis(entries, reader, words)
    const [low, high] = amounts([first.low, first.high], kind, reader)
    if (low === undefined || high === undefined) return undefined
    if (hasThreePoints(first)) return notThis(entries, reader, words, straight(first, low, high))
    return low <= high
      ? { low, high }
      : notThis(entries, reader, 'limits with the lower one first', turned(first))
  }
  const size = readSized(parts, entries, reader, kind)
  return size && { low: size.nominal, high: size.nominal, ...size }
}

/** `84 to 108 V` and `84-108 V` as `84..108 V`. */
function rangeMeant([first, second]: readonly Part[]): string | undefined {
  const [low, high] =
    first?.type === 'operation' && first.operator === '-' && !second
      ? [first.left, first.right]
      : first?.type === 'amount' && first.unit?.text === 'to'
        ? [{ ...first, unit: undefined }, second]
        : []
  if (low?.type !== 'amount' || high?.type !== 'amount' || !high.unit) return undefined
  // `108 V - 24 V` is worked out.
  if (low.unit?.text === high.unit.text && Number(low.number) >= Number(high.number)) return undefined
  return `${low.number}${low.unit ? ` ${low.unit.text}` : ''}..${high.number} ${high.unit.text}`
}

type Range = Part & { readonly type: 'range' }

/** `84...108 V`. `.5...75 in` has its points where they belong, and so has `0 .. .5 in`. */
const hasThreePoints = ({ low, high }: Range): boolean =>
  low.type === 'amount' &&
  high.type === 'amount' &&
  high.number.startsWith('.') &&
  !low.number.startsWith('.') &&
  high.span.start - low.span.end === 2

/** `84...108 V` as `84..108 V`; undefined for `0.1...5 in`, where the third point may be that of the number, and where the lower is not first. */
function straight({ low: from, high: to }: Range, low: number, high: number): string | undefined {
  if (from.type !== 'amount' || to.type !== 'amount' || low <= high) return undefined
  const most = to.number.slice(1)
  return !from.unit && Number(from.number) < Number(most)
    ? `${from.number}..${most}${to.unit ? ` ${to.unit.text}` : ''}`
    : undefined
}

/** `29..24 mm` as `24..29 mm`. */
function turned({ low, high }: Range): string | undefined {
  if (low.type !== 'amount' || high.type !== 'amount') return undefined
  const [first, last] = [high.unit, low.unit].map((unit) => (unit ? ` ${unit.text}` : ''))
  return last ? `${high.number}${first}..${low.number}${last}` : `${high.number}..${low.number}${first}`
}

/** Limits that must have an upper end: `max 0.10 mm`. A `min` alone would allow everything that matters. */
export function upperLimit(kind: Kind, limits: Limits): Shape<Band> {
  const words = `the most allowed: \`max\` and ${kinds[kind].words}`
  const whole = band(kind, { ...limits, min: 0 })
  return {
    ...whole,
    words,
    allowed: allowedBy(limits),
    forms: upperForms(kind),
    read: (entries, reader) => {
      const read = whole.read(entries, reader)
      if (!read) return undefined
      if (read.high === undefined) return notThis(entries, reader, words)
      return allWithin({ high: read.high }, limits, entries, kind, reader) && read
    },
  }
}

/** One of a few words. */
export const choice = <const W extends readonly string[]>(words: W): Shape<W[number]> => ({
  words: `one of ${words.join(', ')}`,
  choices: words,
  read: (entries, reader) => {
    const part = single(entries, reader, `one of ${words.join(', ')}`)?.[0]
    if (part?.type === 'word' && words.includes(part.text)) return part.text
    const near = part?.type === 'word' ? closestMatch(part.text, words) : undefined
    return part && notThis(entries, reader, `one of ${words.join(', ')}`, near)
  },
})

export const yesNo = choice(['yes', 'no'])

/** A text whose quotes may be missing. */
function notQuoted(entries: readonly Entry[], reader: Reader, expected: string): undefined {
  reader.problem(spanOf(entries), { type: 'not-this-value', expected, quotes: true })
  return undefined
}

/** Words in quotes. */
export const text: Shape<string> = {
  words: 'a text in quotes',
  mayQuote: true,
  read: (entries, reader) => {
    const [part, more] = entries[0]?.parts ?? []
    if (part?.type === 'text' && !more && entries.length === 1) return part.text
    return notQuoted(entries, reader, 'a text in quotes')
  },
}

/** A designation: a word or a text in quotes, `duplex-1-4462`, `"22 x 1.5"`. */
export const designation: Shape<string> = {
  words: 'a designation: a word, or a text in quotes',
  mayQuote: true,
  read: (entries, reader) => {
    const [part, more] = entries[0]?.parts ?? []
    const isWord = (part?.type === 'word' || part?.type === 'text') && part.text !== ''
    if (isWord && !more && entries.length === 1) return part.text
    return notQuoted(entries, reader, 'a word, or a text in quotes')
  },
}

/** Whether there is such a day, and such a time of it. */
export function isDate(text: string): boolean {
  const day = text.slice(0, 10)
  const stamp = new Date(`${day}T00:00:00Z`)
  const clock = text.length > 10 ? Date.parse(text.replace(/(T\d{2}:\d{2}(?::\d{2})?)$/, '$1Z')) : 0
  return !Number.isNaN(stamp.getTime()) && stamp.toISOString().slice(0, 10) === day && !Number.isNaN(clock)
}

/** ISO 8601 calendar date, with or without a time of day. */
export const date: Shape<string> = {
  words: 'a date, year-month-day',
  forms: [{ entries: [[{ label: 'date', doc: 'Year, month and day: `2026-03-04`.', day: true }]] }],
  read: (entries, reader) => {
    const part = single(entries, reader, 'a date, such as 2026-03-04')?.[0]
    if (part?.type !== 'date') return part && notThis(entries, reader, 'a date, such as 2026-03-04')
    if (!isDate(part.text)) {
      reader.problem(part.span, { type: 'no-such-date', text: part.text })
      return undefined
    }
    return part.text
  },
}

/** `battery, controller or motor`. */
export const either = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`

/** Name of a block of one of the kinds. */
export const reference = (...refersTo: readonly string[]): Shape<string> => ({
  words: `the name of a ${either(refersTo)}`,
  refersTo,
  read: (entries, reader) => {
    const part = single(entries, reader, `the name of a ${either(refersTo)}`)?.[0]
    return part && reader.refers(part, refersTo)
  },
})

/** Longer lists are refused: no machine has so many terminals or feet, and no flange is read at so many places. */
const longestList = 100

/** Whether a list is longer than any is, which is reported at those that are too many. `what` is in it, in words. */
export function isTooLong(
  entries: readonly Entry[],
  reader: Reader,
  what: string,
  most = longestList,
): boolean {
  const count = entries.length
  if (count > most) reader.problem(spanOf(entries.slice(most)), { type: 'list-too-long', count, most, what })
  return count > most
}

/** Words with commas between: `U, V, W`. */
export const names: Shape<readonly Placed<{ readonly name: string }>[]> = {
  words: 'names separated by commas',
  mayQuote: true,
  read: (entries, reader) => {
    if (isTooLong(entries, reader, 'names')) return undefined
    const list = entries.flatMap((entry) => {
      const [part] = entry.parts
      if (entry.parts.length !== 1 || (part?.type !== 'word' && part?.type !== 'text')) return []
      return [{ name: part.text, span: part.span }]
    })
    return list.length === entries.length ? list : notThis(entries, reader, 'names separated by commas')
  },
}
