import { type Kind, kinds, type UnitSystem } from '../quantity/kinds.ts'
import { gaugesNamed, parseNumber, readQuantity } from '../quantity/quantity.ts'
import { findUnit, nameBehind } from '../quantity/units.ts'
import type { Fact } from './block.ts'

/** Units that a number without one may have been meant in, each once: those of the fact's example first, then those of the job's system and of
 * the other. Those in which the number is beyond what the fact can be were not meant. */
export function fittingUnits(
  number: string,
  wanted: readonly Kind[],
  fact: Fact | undefined,
  system: UnitSystem | undefined,
): readonly string[] {
  // `1/0` is no number, but the name of a gauge.
  const gauges = parseNumber(number) === undefined ? wanted.flatMap((kind) => gaugesNamed(number, kind)) : []
  if (gauges.length > 0) return gauges
  const usual = (fact?.example.split(/[\s,]+/) ?? []).flatMap((word) => findUnit(word) ?? [])
  const shown = (of: UnitSystem) =>
    wanted.flatMap((kind) => {
      const { metric, inch } = kinds[kind].shown
      // Where both systems have one unit, the example's serve as well.
      const isOther = metric !== inch || !usual.some((unit) => unit.kind === kind)
      return (isOther && findUnit(kinds[kind].shown[of])) || []
    })
  const { metric, inch } = { metric: shown('metric'), inch: shown('inch') }
  const all = new Set(system === 'inch' ? [...inch, ...usual, ...metric] : [...usual, ...metric, ...inch])
  return [...all]
    .filter(({ kind, name }) => wanted.includes(kind) && canBe(number, name, fact))
    .map((unit) => nameBehind(number, unit))
}

/** Whether a number in a unit, or without one, is within what the fact can be. One that is not a plain number may be anything. */
export function canBe(number: string, unit: string | undefined, fact: Fact | undefined): boolean {
  const read = readQuantity(number, unit)
  if (!read.ok) return read.problem.type === 'not-a-number'
  // The limits of a shape are for one of its amounts: `5 kn 0.62 kN` has two.
  const { quantity, allowed } = fact?.shape ?? {}
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } =
    (quantity === read.value.kind && allowed) || {}
  return low <= read.value.si && read.value.si <= high
}
