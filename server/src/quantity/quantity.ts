import { type Dimension, describeDimension, dimensionless, over, sameDimension, times } from './dimension.ts'
import { type Kind, kinds } from './kinds.ts'
import { nearest } from './nearest.ts'
import { findUnit, type Unit, units, unitsOf } from './units.ts'

/** An amount with its dimension. `kind` is absent on the product or quotient of others: it then fits every kind of its dimension. */
export interface Quantity {
  readonly si: number
  readonly dimension: Dimension
  readonly kind?: Kind
  /** The unit it was written in. */
  readonly unit?: Unit
}

/** What can be wrong with an amount, as data: the words and the fix are made from it. */
export type QuantityProblem =
  | {
      readonly type: 'unknown-unit'
      readonly unit: string
      readonly nearest?: string
      readonly expected?: Kind
    }
  /** `or`: what else was expected. */
  | { readonly type: 'no-unit'; readonly expected: Kind; readonly or?: Kind; readonly likely: string }
  | { readonly type: 'wrong-kind'; readonly expected: Kind; readonly found: string; readonly likely: string }
  | { readonly type: 'not-a-number'; readonly text: string }
  | { readonly type: 'not-a-gauge'; readonly text: string }
  | {
      readonly type: 'cannot-combine'
      readonly operator: string
      readonly left: string
      readonly right: string
    }
  | { readonly type: 'divided-by-zero' }

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: QuantityProblem }

export const good = <T>(value: T): Outcome<T> => ({ ok: true, value })
export const bad = (problem: QuantityProblem): Outcome<never> => ({ ok: false, problem })

export const quantity = (si: number, kind: Kind, unit?: Unit): Quantity => ({
  si,
  dimension: kinds[kind].dimension,
  kind,
  ...(unit && { unit }),
})

/** Value of a written number: `35`, `-0.02`, `1e3`, `3/4`, `1-1/4`, `1 1/4`. Undefined when it is not finite. */
export function parseNumber(text: string): number | undefined {
  const fraction = text.includes('/') && /^([-−+]?)\s*(?:(\d+)[-\u2011\s]+)?(\d+)\/(\d+)$/.exec(text)
  const value = fraction
    ? (/^[-−]/.test(text) ? -1 : 1) * (Number(fraction[2] ?? 0) + Number(fraction[3]) / Number(fraction[4]))
    : Number(text.replace('−', '-').replaceAll(' ', ''))
  return text.trim() !== '' && Number.isFinite(value) ? value : undefined
}

/** Signs for feet and inches, as drawings have them. */
const marks = [
  ['′', 'ft'],
  ['″', 'in'],
  ["'", 'ft'],
  ['"', 'in'],
] as const

/** `ft` for `'`, `in` for `"`. */
export const unitOfMark = (mark: string): string | undefined => new Map<string, string>(marks).get(mark)

/** The unit that was meant: its name or alias that is nearest, or its name where it is written out, `volts` for V. */
function nearestUnit(written: string, among: readonly Unit[]): string | undefined {
  const words = among.flatMap(({ name, aliases, doc }) => [
    ...[name, ...aliases].map((word) => [word, word] as const),
    [doc.split(/[,:]/, 1)[0] ?? name, name] as const,
  ])
  const meant = new Map([...words, ...marks])
  const near = nearest(written, meant.keys())
  return near && meant.get(near)
}

/** Units of the kind in which the text is a name: `1/0` in AWG. */
export const gaugesNamed = (text: string, kind: Kind): readonly string[] =>
  unitsOf(kind).flatMap(({ name, named }) => (named?.(text) === undefined ? [] : [name]))

/** A written number and unit as a quantity. Without a unit it is a plain number. */
export function readQuantity(text: string, unitName: string | undefined, expected?: Kind): Outcome<Quantity> {
  if (unitName === undefined) {
    const value = parseNumber(text)
    if (value !== undefined) return good(quantity(value, 'ratio'))
    const [likely] = expected ? gaugesNamed(text, expected) : []
    return bad(expected && likely ? { type: 'no-unit', expected, likely } : { type: 'not-a-number', text })
  }
  const unit = findUnit(unitName)
  if (!unit) {
    // Units of the expected kind come first, so that a slip is mended within it.
    const near = (expected && nearestUnit(unitName, unitsOf(expected))) ?? nearestUnit(unitName, units)
    return bad({
      type: 'unknown-unit',
      unit: unitName,
      ...(near && { nearest: near }),
      ...(expected && { expected }),
    })
  }
  if (unit.named) {
    const si = unit.named(text)
    return si === undefined ? bad({ type: 'not-a-gauge', text }) : good(quantity(si, unit.kind, unit))
  }
  const value = parseNumber(text)
  const si = value === undefined ? Number.NaN : value * unit.si + unit.offset
  return Number.isFinite(si) ? good(quantity(si, unit.kind, unit)) : bad({ type: 'not-a-number', text })
}

/** What the quantity is, with its article: "a mass". */
const describeKind = (q: Quantity): string => (q.kind ? kinds[q.kind].words : describeDimension(q.dimension))

const isKind = (q: Quantity, kind: Kind): boolean =>
  q.kind === undefined ? sameDimension(q.dimension, kinds[kind].dimension) : q.kind === kind

/** The quantity as one of `kind`, or what is wrong: a missing unit is told apart from a unit of another kind. */
export function asKind(q: Quantity, kind: Kind): Outcome<Quantity> {
  if (isKind(q, kind)) return good({ ...q, kind })
  const likely = kinds[kind].shown.metric
  if (q.kind === 'ratio' && !q.unit) return bad({ type: 'no-unit', expected: kind, likely })
  return bad({ type: 'wrong-kind', expected: kind, found: describeKind(q), likely })
}

const cannot = (operator: string, left: Quantity, right: Quantity): Outcome<never> =>
  bad({ type: 'cannot-combine', operator, left: describeKind(left), right: describeKind(right) })

const hasOffset = (q: Quantity): boolean => (q.unit?.offset ?? 0) !== 0

const finite = (q: Quantity): Outcome<Quantity> =>
  Number.isFinite(q.si) ? good(q) : bad({ type: 'not-a-number', text: String(q.si) })

/** `left operator right` with dimensions checked. A temperature read from its own zero takes part in no arithmetic. */
export function combine(operator: '+' | '-' | '*' | '/', left: Quantity, right: Quantity): Outcome<Quantity> {
  if (hasOffset(left) || hasOffset(right)) return cannot(operator, left, right)
  if (operator === '+' || operator === '-') {
    const kindsDiffer = left.kind !== undefined && right.kind !== undefined && left.kind !== right.kind
    if (kindsDiffer || !sameDimension(left.dimension, right.dimension)) return cannot(operator, left, right)
    const kind = left.kind ?? right.kind
    const unit = left.unit ?? right.unit
    const si = operator === '+' ? left.si + right.si : left.si - right.si
    return finite({ si, dimension: left.dimension, ...(kind && { kind }), ...(unit && { unit }) })
  }
  if (operator === '/' && right.si === 0) return bad({ type: 'divided-by-zero' })
  const si = operator === '*' ? left.si * right.si : left.si / right.si
  const dimension = (operator === '*' ? times : over)(left.dimension, right.dimension)
  const isScale = (q: Quantity) =>
    q.kind === 'ratio' || (q.kind === undefined && sameDimension(q.dimension, dimensionless))
  // Scaling keeps the kind and the unit; anything else is known by its dimension alone.
  if (isScale(right)) return finite({ ...left, si })
  if (operator === '*' && isScale(left)) return finite({ ...right, si })
  return finite({ si, dimension })
}

export const negate = (q: Quantity): Outcome<Quantity> =>
  hasOffset(q) ? cannot('-', q, q) : good({ ...q, si: -q.si })
