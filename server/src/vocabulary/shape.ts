import { z } from 'zod'
import type { Band } from '../quantity/band.ts'
import { fitBand } from '../quantity/fits.ts'
import { formatBand, formatSi } from '../quantity/format.ts'
import { type Kind, kinds, type UnitSystem } from '../quantity/kinds.ts'
import { nearest } from '../quantity/nearest.ts'
import type { Entry, Part, Span } from '../syntax/tree.ts'
import type { Reader } from './reader.ts'

/** How a fact's value is written, read and bounded. `T` is what the floors above get: SI numbers, words, lists of them. */
export interface Shape<T> {
  /** What is expected, for messages and the reference: "a length". */
  readonly words: string
  readonly schema: z.ZodType<T>
  /** Reads the value, or reports what is wrong and gives undefined. Never called without entries. */
  readonly read: (entries: readonly Entry[], reader: Reader) => T | undefined
  /** Kind of the amounts in it. */
  readonly quantity?: Kind
  /** The words it may be, where it is one of a few. */
  readonly choices?: readonly string[]
  /** Kinds of block it may name. */
  readonly refersTo?: readonly string[]
  /** Limits of the schema, SI. */
  readonly allowed?: Allowed
}

export interface Allowed extends Band {
  /** The low end itself is outside. */
  readonly above?: true
}

/** What the shape allows, for people: `above 0 mm, at most 2 m`. Undefined where it has no limits. */
export function sayAllowed({ allowed, quantity }: Shape<unknown>, system?: UnitSystem): string | undefined {
  if (!allowed || !quantity) return undefined
  if (!allowed.above || allowed.low === undefined) return formatBand(allowed, quantity, system)
  const above = `above ${formatSi(allowed.low, quantity, system)}`
  return allowed.high === undefined ? above : `${above}, at most ${formatSi(allowed.high, quantity, system)}`
}

/** Where several things stand in one value, each keeps its place. */
export type Placed<T> = T & { readonly span: Span }

const spanOf = (entries: readonly Entry[]): Span => ({
  start: entries[0]?.span.start ?? 0,
  end: entries.at(-1)?.span.end ?? 0,
})

const textOf = (parts: readonly Part[]): string =>
  parts
    .map((p) =>
      'text' in p ? p.text : p.type === 'amount' ? `${p.number}${p.unit ? ` ${p.unit.text}` : ''}` : '…',
    )
    .join(' ')

export function notThis(
  entries: readonly Entry[],
  reader: Reader,
  expected: string,
  near?: string,
): undefined {
  const found = entries.map((entry) => textOf(entry.parts)).join(', ')
  reader.problem(spanOf(entries), { type: 'not-this-value', found, expected, ...(near && { nearest: near }) })
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
  if (entries.length !== 1 || !parts || parts.length > most) return notThis(entries, reader, expected)
  return parts
}

export interface Limits {
  /** SI. `over`: must be greater than. */
  readonly over?: number
  readonly min?: number
  readonly max?: number
}

const bounded = ({ over, min, max }: Limits): z.ZodType<number> => {
  let schema = z.number()
  if (over !== undefined) schema = schema.gt(over)
  if (min !== undefined) schema = schema.min(min)
  if (max !== undefined) schema = schema.max(max)
  return schema
}

const allowedBy = ({ over, min, max }: Limits): { allowed?: Allowed } => {
  const low = min ?? over
  if (low === undefined && max === undefined) return {}
  return {
    allowed: {
      ...(low !== undefined && { low }),
      ...(max !== undefined && { high: max }),
      ...(min === undefined && over !== undefined && { above: true }),
    },
  }
}

/** One amount of a kind: `420 mm`. */
export const amount = (kind: Kind, limits: Limits = { over: 0 }): Shape<number> => ({
  words: kinds[kind].words,
  quantity: kind,
  schema: bounded(limits),
  ...allowedBy(limits),
  read: (entries, reader) => {
    const part = single(entries, reader, kinds[kind].words)?.[0]
    return part && reader.amount(part, kind)
  },
})

/** A count: a whole number without unit. */
export const count = (limits: Limits = { min: 1, max: 1000 }): Shape<number> => ({
  words: 'a whole number',
  quantity: 'ratio',
  schema: bounded(limits).refine(Number.isInteger),
  ...allowedBy(limits),
  read: (entries, reader) => {
    const part = single(entries, reader, 'a whole number')?.[0]
    const value = part && reader.amount(part, 'ratio')
    return value === undefined || Number.isInteger(value) ? value : notThis(entries, reader, 'a whole number')
  },
})

/** A nominal size with the limits its tolerance gives: `35 mm h9`, `35 mm ± 0.02 mm`, `26 mm +3/-2 mm`, or plain `35 mm`. */
export interface Sized extends Band {
  readonly nominal: number
}

export const sized = (kind: Kind, limits: Limits = { over: 0 }): Shape<Sized> => ({
  words: `${kinds[kind].words}, with a tolerance if there is one`,
  quantity: kind,
  schema: z.object({
    nominal: bounded(limits),
    low: bounded(limits).optional(),
    high: bounded(limits).optional(),
  }) as z.ZodType<Sized>,
  ...allowedBy(limits),
  read: (entries, reader) => {
    const parts = single(entries, reader, `${kinds[kind].words}, with a tolerance if there is one`, 2)
    return parts && readSized(parts, entries, reader, kind)
  },
})

function readSized(
  parts: readonly Part[],
  entries: readonly Entry[],
  reader: Reader,
  kind: Kind,
): Sized | undefined {
  const [first, second] = parts
  if (!first) return undefined
  if (second?.type === 'plus-minus') {
    const [nominal, by] = reader.amounts([first, second.by], kind)
    return nominal === undefined || by === undefined
      ? undefined
      : { nominal, low: nominal - Math.abs(by), high: nominal + Math.abs(by) }
  }
  if (second?.type === 'two-sided') {
    const unitHolder: Part =
      second.unit && first.type === 'amount' && !first.unit ? { ...first, unit: second.unit } : first
    const nominal = reader.amount(unitHolder, kind)
    const sides = reader.sides(second, kind, first)
    return nominal === undefined || !sides
      ? undefined
      : { nominal, low: nominal - sides[1], high: nominal + sides[0] }
  }
  const nominal = reader.amount(first, kind)
  if (nominal === undefined || !second) return nominal === undefined ? undefined : { nominal }
  if (second.type !== 'word') return notThis(entries, reader, `${kinds[kind].words} and its tolerance`)
  const band = kind === 'length' ? fitBand(nominal, second.text) : undefined
  if (!band) reader.problem(second.span, { type: 'unknown-fit', text: second.text })
  return { ...band, nominal }
}

/** Limits: `84..108 V`, `max 0.10 mm`, `min 4 mm`, `26 mm +3/-2 mm`, `26 mm ± 2 mm`. A plain amount is its own limits. */
export const band = (kind: Kind, limits: Limits = { min: 0 }): Shape<Band> => ({
  words: `limits of ${kinds[kind].words.replace(/^an? /, '')}: \`a..b\`, \`max a\`, \`min a\` or \`a +b/-c\``,
  quantity: kind,
  schema: z
    .object({
      low: bounded(limits).optional(),
      high: bounded(limits).optional(),
      nominal: z.number().optional(),
    })
    .refine((b) => b.low === undefined || b.high === undefined || b.low <= b.high) as z.ZodType<Band>,
  ...allowedBy(limits),
  read: (entries, reader) => {
    const words = `limits of ${kinds[kind].words.replace(/^an? /, '')}`
    const parts = single(entries, reader, words, 2)
    const [first, second] = parts ?? []
    if (!parts || !first) return undefined
    if (first.type === 'word' && (first.text === 'max' || first.text === 'min')) {
      const value = second && reader.amount(second, kind)
      if (!second) return notThis(entries, reader, `${first.text} and ${kinds[kind].words}`)
      return value === undefined ? undefined : first.text === 'max' ? { high: value } : { low: value }
    }
    if (first.type === 'range') {
      if (second) return notThis(entries, reader, words)
      const [low, high] = reader.amounts([first.low, first.high], kind)
      return low === undefined || high === undefined ? undefined : { low, high }
    }
    const size = readSized(parts, entries, reader, kind)
    return size && { low: size.nominal, high: size.nominal, ...size }
  },
})

/** Limits that must have an upper end: `max 0.10 mm`. A `min` alone would allow everything that matters. */
export function upperLimit(kind: Kind, limits: Limits = { min: 0 }): Shape<Band> {
  const { allowed: _not, ...shape } = band(kind, limits)
  return {
    ...shape,
    words: `the most that is allowed, ${kinds[kind].words}: \`max a\``,
    schema: shape.schema.refine((b) => b.high !== undefined),
  }
}

/** One of a few words. */
export const choice = <const W extends readonly string[]>(words: W): Shape<W[number]> => ({
  words: `one of ${words.join(', ')}`,
  choices: words,
  schema: z.enum(words as unknown as [string, ...string[]]) as unknown as z.ZodType<W[number]>,
  read: (entries, reader) => {
    const part = single(entries, reader, `one of ${words.join(', ')}`)?.[0]
    if (part?.type === 'word' && words.includes(part.text)) return part.text
    const near = part?.type === 'word' ? nearest(part.text, words) : undefined
    return part && notThis(entries, reader, `one of ${words.join(', ')}`, near)
  },
})

export const yesNo = choice(['yes', 'no'])

/** Words in quotes. */
export const text: Shape<string> = {
  words: 'a text in quotes',
  schema: z.string(),
  read: (entries, reader) => {
    const part = single(entries, reader, 'a text in quotes')?.[0]
    return part?.type === 'text' ? part.text : part && notThis(entries, reader, 'a text in quotes')
  },
}

/** A designation: a word or a text in quotes, `duplex-1-4462`, `"22 x 1.5"`. */
export const designation: Shape<string> = {
  words: 'a designation: a word, or a text in quotes',
  schema: z.string().min(1),
  read: (entries, reader) => {
    const part = single(entries, reader, 'a designation')?.[0]
    if (part?.type === 'word' || part?.type === 'text') return part.text
    return part && notThis(entries, reader, 'a word, or a text in quotes')
  },
}

/** ISO 8601 calendar date, with or without a time of day. */
export const date: Shape<string> = {
  words: 'a date, year-month-day',
  schema: z.string(),
  read: (entries, reader) => {
    const part = single(entries, reader, 'a date, such as 2026-03-04')?.[0]
    if (part?.type !== 'date') return part && notThis(entries, reader, 'a date, such as 2026-03-04')
    const day = part.text.slice(0, 10)
    const stamp = new Date(`${day}T00:00:00Z`)
    const clock =
      part.text.length > 10
        ? Date.parse(part.text.replace(/(T\d{2}:\d{2})$/, '$1Z').replace(/(T\d{2}:\d{2}:\d{2})$/, '$1Z'))
        : 0
    if (Number.isNaN(stamp.getTime()) || stamp.toISOString().slice(0, 10) !== day || Number.isNaN(clock)) {
      reader.problem(part.span, { type: 'no-such-date', text: part.text })
      return undefined
    }
    return part.text
  },
}

/** Name of a block of one of the kinds. */
export const reference = (...refersTo: readonly string[]): Shape<string> => ({
  words: `the name of a ${refersTo.join(' or ')}`,
  refersTo,
  schema: z.string(),
  read: (entries, reader) => {
    const part = single(entries, reader, `the name of a ${refersTo.join(' or ')}`)?.[0]
    return part && reader.refers(part, refersTo)
  },
})

/** Words with commas between: `U, V, W`. */
export const names: Shape<readonly Placed<{ readonly name: string }>[]> = {
  words: 'names with commas between them',
  schema: z.array(z.looseObject({ name: z.string() })).min(1) as unknown as z.ZodType<
    readonly Placed<{ readonly name: string }>[]
  >,
  read: (entries, reader) => {
    const list = entries.flatMap((entry) => {
      const [part] = entry.parts
      if (entry.parts.length !== 1 || (part?.type !== 'word' && part?.type !== 'text')) return []
      return [{ name: part.text, span: part.span }]
    })
    return list.length === entries.length ? list : notThis(entries, reader, 'names with commas between them')
  },
}
