import type { Value } from '../../job/model.ts'
import { formatBandWith, formatFixed, inUnit, shownUnit } from '../../quantity/format.ts'
import { formatLength } from '../../quantity/format-measures.ts'
import type { Kind, UnitSystem } from '../../quantity/kinds.ts'
import { findUnit, type Unit, unitSystemOf } from '../../quantity/units.ts'
import { type Entry, type Part, withInside } from '../../syntax/tree.ts'
import type { Shape } from '../../vocabulary/shape.ts'
import { type Bolts, bolts } from '../../vocabulary/shapes/bolts.ts'
import { side } from '../../vocabulary/shapes/side.ts'
import { isBand } from '../hover/format-value.ts'
import { formatTo, stepOf } from './converted-digits.ts'

/** A value in the units of the other system, or what an arithmetic comes to. */
export interface Converted {
  readonly words: string
  readonly source: string
  /** It is what an arithmetic or a reference comes to. */
  readonly isSum?: true
}

/** The unit of the first amount of the kind. */
const unitIn = (parts: readonly Part[], kind: Kind): Unit | undefined =>
  parts
    .map((part) => ('unit' in part && part.unit ? findUnit(part.unit.text) : undefined))
    .find((unit) => unit?.kind === kind)

const isList = (value: unknown): value is readonly { readonly value: number }[] =>
  Array.isArray(value) &&
  value.every((item: unknown) => typeof (item as { value?: unknown })?.value === 'number')

/** `a in, b in` as `a, b in`. */
function oneUnit(amounts: readonly string[], tie: string): string {
  const units = new Set(amounts.map((words) => words.slice(words.indexOf(' '))))
  return units.size === 1
    ? `${amounts.map((words) => words.split(' ', 1)[0]).join(tie)}${[...units][0]}`
    : amounts.join(tie)
}

/** `step`: how finely it is written, SI. */
function convertedText(value: unknown, kind: Kind, system: UnitSystem, step = 0): string | undefined {
  const one = (si: number) => formatTo(si, kind, system, step)
  if (typeof value === 'number') return one(value)
  if (isList(value)) {
    const formatOne = (si: number) => (kind === 'length' ? formatLength(si, system) : one(si))
    return oneUnit(
      value.map((item) => formatOne(item.value)),
      ', ',
    )
  }
  if (!isBand(value)) return undefined
  const { nominal, low, high } = value
  if (low !== undefined && high !== undefined && low !== high) {
    // In tenths of what lies between them at least.
    const unit = shownUnit(kind, high, system)
    if (!unit) return undefined
    const tenths = Math.ceil(1 - Math.log10((high - low) / unit.si))
    const decimals = Math.min(6, Math.max(0, tenths))
    const formatOne = (si: number) => formatFixed(inUnit(si, unit), decimals)
    return `${formatOne(low)} to ${formatOne(high)} ${unit.name}`
  }
  if (nominal !== undefined) return one(nominal)
  return formatBandWith(value, one).replace(/^(at most|at least|exactly) /, '')
}

/** What is to be converted of a value: the size of a distance to a side, the torque of bolts. */
function amountOf(value: unknown, shape: Shape<unknown>): { readonly of: unknown; readonly kind?: Kind } {
  if (shape === bolts) return { of: (value as Bolts).torque, kind: 'torque' }
  const { quantity: kind } = shape
  return { of: shape === side ? Math.abs(value as number) : value, ...(kind && { kind }) }
}

/** Undefined where it would say nothing: counts, volts, zero, and what reads alike in both systems. */
export function converted(
  value: Value<unknown>,
  shape: Shape<unknown>,
  system: UnitSystem,
): Converted | undefined {
  const { of, kind } = amountOf(value.value, shape)
  if (!kind || kind === 'ratio') return undefined
  const parts = value.node.entries.flatMap((entry: Entry) => entry.parts.flatMap(withInside))
  if (parts.some(({ type }) => type === 'operation') || isReference(value.node.entries)) {
    const words = convertedText(of, kind, system)
    return words === undefined
      ? undefined
      : { words: `= ${words}`, source: 'calculated from what is written', isSum: true }
  }
  const unit = unitIn(parts, kind)
  if (!unit) return undefined
  const written = unitSystemOf(unit)
  const other = written === 'metric' ? 'inch' : 'metric'
  const step = stepOf(parts, kind)
  const words = convertedText(of, kind, other, step)
  if (words === undefined || words === convertedText(of, kind, written, step) || /^-?0 /.test(words))
    return undefined
  const shown = findUnit(words.slice(words.lastIndexOf(' ') + 1))
  const from = [...new Set([unit, ...(shown ? [shown] : [])].map(({ name, source }) => `${name}: ${source}`))]
  return { words: `(${words})`, source: from.join('; ') }
}

const isReference = ([entry, more]: readonly Entry[]): boolean =>
  more === undefined && entry?.parts.length === 1 && entry.parts[0]?.type === 'word'
