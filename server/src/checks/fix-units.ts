import type { Block, Place } from '../job/model.ts'
import { type Kind, kinds } from '../quantity/kinds.ts'
import { readQuantity } from '../quantity/quantity.ts'
import { findUnit } from '../quantity/units.ts'
import type { Fact } from '../vocabulary/block.ts'
import { findKind } from '../vocabulary/index.ts'
import type { FixGround } from './check.ts'
import { factAt, textAt } from './fix-text.ts'

/** What the vocabulary says of the fact at a place. */
export function declaredAt(block: Block | undefined, at: Place): Fact | undefined {
  const kind = block && findKind(block.kind)
  const name = factAt(block, at)?.name.text ?? kind?.bare
  return kind && name !== undefined && Object.hasOwn(kind.facts, name) ? kind.facts[name] : kind?.others
}

/** Units that a number without one may have been meant in: the fact's usual one first, then those of the job's system and of the other. Those
 * in which the number is beyond what the fact can be were not meant. */
export function fittingUnits(
  at: Place,
  kind: Kind | undefined,
  { block, lookup }: FixGround,
): readonly string[] {
  const fact = declaredAt(block, at)
  const usual = fact?.example.split(/[\s,]+/).filter((word) => findUnit(word)?.kind === kind) ?? []
  const { metric, inch } = kinds[kind ?? 'ratio'].shown
  const shown = lookup?.system === 'inch' ? [inch, ...usual, metric] : [...usual, metric, inch]
  return [...new Set(shown)].filter((unit) => unit !== '' && canBe(textAt(at), unit, fact))
}

/** Whether a number in a unit is within what the fact can be. One that is not a plain number may be anything. */
export function canBe(number: string, unit: string, fact: Fact | undefined): boolean {
  const read = readQuantity(number, unit)
  const allowed = fact?.shape.allowed
  if (!read.ok) return read.problem.type === 'not-a-number'
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = allowed ?? {}
  return low <= read.value.si && read.value.si <= high
}
