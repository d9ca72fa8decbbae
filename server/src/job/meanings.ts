import { formatNumber, formatSi } from '../quantity/format.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { readQuantity } from '../quantity/quantity.ts'
import { insideOf, type Part } from '../syntax/tree.ts'
import type { Fact } from '../vocabulary/block.ts'
import type { Meaning } from './model.ts'

/** The fact that a number is of, and where its text is. */
export interface NumberContext {
  /** Of the section. */
  readonly text: string
  readonly fact: Fact
  readonly system: UnitSystem
}

/** Whether a fact takes `84..108 V`. */
export const takesLimits = ({ shape }: Fact): boolean =>
  shape.forms?.some(({ entries }) => entries.flat().some(({ label }) => label.includes('..'))) ?? false

export type NumberPart = Extract<Part, { type: 'amount' | 'two-sided' }>

/** The numbers of a part, from left to right. */
export const numbersIn = (part: Part): readonly NumberPart[] =>
  part.type === 'amount' || part.type === 'two-sided' ? [part] : insideOf(part).flatMap(numbersIn)

export interface Ranked extends Meaning {
  /** The less, the likelier. */
  readonly unlikely: number
}

export function meaningOf(
  write: string,
  part: NumberPart,
  unit: string | undefined,
  given: NumberContext,
): Ranked {
  const number = part.type === 'amount' ? plainNumber.exec(write)?.[0] : undefined
  const read = number === undefined ? undefined : readQuantity(number, part.unit?.text ?? unit)
  if (!read?.ok) return { write, unlikely: 0 }
  const { si, kind } = read.value
  const comesTo = kind && (kind === 'ratio' ? formatNumber(si) : formatSi(si, kind, given.system))
  const { quantity, allowed } = given.fact.shape
  const isOutside =
    quantity === kind &&
    allowed !== undefined &&
    (si < (allowed.low ?? Number.NEGATIVE_INFINITY) || si > (allowed.high ?? Number.POSITIVE_INFINITY))
  return {
    write,
    ...(comesTo !== undefined && comesTo !== write && { comesTo }),
    ...(isOutside && { isOutside }),
    unlikely: (isOutside ? 1000 : 0) + apart(si, usual(given.fact)),
  }
}

const plainNumber = /[\d.]+(?:[eE][+-]?\d+)?/

/** Powers of ten between two amounts. */
export const apart = (a: number, b: number | undefined): number =>
  a > 0 && b !== undefined && b > 0 ? Math.abs(Math.log10(a / b)) : 0

/** The first amount in the example of the fact. */
export function usual({ example, shape }: Fact): number | undefined {
  for (const [, number = '', unit] of example.matchAll(/([\d.]+)(?:\s+([^\s,\d][^\s,]*))?/g)) {
    const read = readQuantity(number.split('..').at(-1) ?? '', unit)
    if (read.ok && read.value.kind === shape.quantity) return read.value.si
  }
  return undefined
}
