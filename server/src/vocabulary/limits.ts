import type { Band } from '../quantity/band.ts'
import { formatBandWith, formatIn, formatSi } from '../quantity/format.ts'
import type { Kind } from '../quantity/kinds.ts'
import { findUnit, type Unit } from '../quantity/units.ts'
import type { Part, Span } from '../syntax/tree.ts'
import type { Reader } from './reader.ts'

/** What a number may be, SI. */
export interface Limits {
  /** It must be greater than this. */
  readonly over?: number
  readonly min?: number
  readonly max?: number
}

export interface Allowed extends Band {
  /** The low end itself is outside. */
  readonly above?: true
}

/** 70 % is 0.7000000000000001 as a double: an end is not passed by its last digits. */
const lastDigits = 1e-12

const isWithin = (
  value: number,
  { over = Number.NEGATIVE_INFINITY, min = over, max = Number.MAX_VALUE }: Limits,
): boolean =>
  Number.isFinite(value) &&
  value > over &&
  value - min >= -lastDigits * Math.abs(value) &&
  value - max <= lastDigits * Math.abs(value)

export const allowedBy = ({ over, min, max }: Limits): Allowed => {
  const low = min ?? over
  return {
    ...(low !== undefined && { low }),
    ...(max !== undefined && { high: max }),
    ...(min === undefined && over !== undefined && { above: true }),
  }
}

/** `above 0 mm, at most 2 m`, each amount in the words of `show`. */
export function formatLimits(allowed: Allowed, show: (si: number) => string): string {
  if (!allowed.above || allowed.low === undefined) return formatBandWith(allowed, show)
  const above = `above ${show(allowed.low)}`
  return allowed.high === undefined ? above : `${above}, at most ${show(allowed.high)}`
}

/** Where an amount is written, and what it is of. */
export interface Written {
  readonly span: Span
  readonly parts: readonly Part[]
  readonly kind: Kind
}

/** The first unit of the kind that is written in the parts, and whose numbers are amounts. */
function unitIn(parts: readonly Part[], kind: Kind): Unit | undefined {
  for (const part of parts) {
    const unit = unitOf(part, kind)
    if (unit?.kind === kind && !unit.named) return unit
  }
  return undefined
}

function unitOf(part: Part, kind: Kind): Unit | undefined {
  switch (part.type) {
    case 'amount':
    case 'two-sided':
      return part.unit && findUnit(part.unit.text)
    case 'negated':
      return unitOf(part.of, kind)
    case 'plus-minus':
      return unitOf(part.by, kind)
    case 'operation':
      return unitIn([part.left, part.right], kind)
    case 'range':
      return unitIn([part.low, part.high], kind)
    default:
      return undefined
  }
}

/** Below this no figure is one of a boat, m and rad: a thousandth of an atom over a metre. A reading beside zero may be as small as arithmetic made it,
 * and zero itself is real. */
const leastMeasured: Readonly<Partial<Record<Kind, number>>> = { length: 1e-13, angle: 1e-13 }

/** What was written is other than zero and too small to be measured. Arithmetic may leave so little of what is equal. */
function isBelowMeasured(value: number, parts: readonly Part[], least: number): boolean {
  const number = (part: Part): string | undefined =>
    part.type === 'negated' ? number(part.of) : part.type === 'amount' ? part.number : undefined
  // Of a figure that a double takes for zero, only the digits tell.
  return Math.abs(value) < least && parts.every((part) => /^[^eE]*[1-9]/.test(number(part) ?? ''))
}

/** The value, where it is within its limits. Outside them it is refused where it stands, the limits said in the unit it was written in, or where
 * it has none in the job's own. */
export function within(
  value: number | undefined,
  limits: Limits,
  { span, parts, kind }: Written,
  reader: Reader,
): number | undefined {
  if (value === undefined) return undefined
  const isIn = isWithin(value, limits)
  const least = leastMeasured[kind]
  const tooSmall = isIn && least !== undefined && isBelowMeasured(value, parts, least)
  if (isIn && !tooSmall) return value
  const unit = unitIn(parts, kind)
  const show = (si: number) => (unit ? formatIn(si, unit) : formatSi(si, kind, reader.system))
  const allowed = tooSmall ? `${show(0)}, or at least ${show(least)}` : formatLimits(allowedBy(limits), show)
  reader.problem(span, { type: 'outside-allowed', allowed })
  return undefined
}
