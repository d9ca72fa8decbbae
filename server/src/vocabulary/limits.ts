import * as z from 'zod/mini'
import type { Band } from '../quantity/band.ts'
import { formatIn, sayBand } from '../quantity/format.ts'
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

export const bounded = ({ over, min, max }: Limits): z.ZodMiniType<number> => {
  let schema: z.ZodMiniType<number> = z.number()
  if (over !== undefined) schema = schema.check(z.gt(over))
  if (min !== undefined) schema = schema.check(z.gte(min))
  if (max !== undefined) schema = schema.check(z.lte(max))
  return schema
}

const isWithin = (
  value: number,
  { over = Number.NEGATIVE_INFINITY, min = over, max = Number.MAX_VALUE }: Limits,
): boolean => value > over && value >= min && value <= max

export const allowedBy = ({ over, min, max }: Limits): Allowed => {
  const low = min ?? over
  return {
    ...(low !== undefined && { low }),
    ...(max !== undefined && { high: max }),
    ...(min === undefined && over !== undefined && { above: true }),
  }
}

/** `above 0 mm, at most 2 m`, each amount in the words of `show`. */
export function sayLimits(allowed: Allowed, show: (si: number) => string): string {
  if (!allowed.above || allowed.low === undefined) return sayBand(allowed, show)
  const above = `above ${show(allowed.low)}`
  return allowed.high === undefined ? above : `${above}, at most ${show(allowed.high)}`
}

/** Where an amount stands, and the unit it was written in. */
export interface Written {
  readonly span: Span
  readonly unit: Unit | undefined
}

/** The first unit written in the parts. */
export function unitIn(parts: readonly Part[]): Unit | undefined {
  for (const part of parts) {
    const unit = unitOf(part)
    if (unit) return unit
  }
  return undefined
}

function unitOf(part: Part): Unit | undefined {
  switch (part.type) {
    case 'amount':
    case 'two-sided':
      return part.unit && findUnit(part.unit.text)
    case 'negated':
      return unitOf(part.of)
    case 'plus-minus':
      return unitOf(part.by)
    case 'operation':
      return unitIn([part.left, part.right])
    case 'range':
      return unitIn([part.low, part.high])
    default:
      return undefined
  }
}

/**
 * The value, where it is within its limits. Outside them it is refused where it stands, the limits said in the unit it was written in.
 * One written without a unit is left to the schema: it is refused in the job's own units.
 */
export function within(
  value: number | undefined,
  limits: Limits,
  { span, unit }: Written,
  reader: Reader,
): number | undefined {
  if (value === undefined || !unit || unit.named || isWithin(value, limits)) return value
  const allowed = sayLimits(allowedBy(limits), (si) => formatIn(si, unit))
  reader.problem(span, { type: 'outside-allowed', allowed })
  return undefined
}
