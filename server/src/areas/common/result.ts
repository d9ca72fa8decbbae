import { type Margin, marginTo, type Verdict, verdictOn } from '../../quantity/conformity.ts'
import type { Lookup } from '../../store/lookup.ts'
import type { Amount, Figure, PlainFigure } from './figure.ts'
import type { Outcome } from './outcome.ts'
import type { Ground } from './view.ts'

/** What a figure comes to at a block. */
export interface Result {
  readonly figure: Figure
  readonly amount: Amount
  /** Absent where it has no limit. */
  readonly verdict?: Verdict
  readonly margin?: Margin
}

/** A figure that cannot be worked out at a block, and why. */
export interface NoResult {
  readonly figure: Figure
  readonly fault: string
}

export const isResult = (one: Result | NoResult): one is Result => 'amount' in one

const judged = (figure: Figure, amount: Amount): Result => {
  const { limit, doubt } = amount
  if (!limit) return { figure, amount }
  const found = verdictOn(limit, amount)
  // What is in doubt cannot prove that a limit is kept.
  const verdict = found === 'within' && doubt !== undefined ? 'undecided' : found
  const margin = marginTo(limit, amount)
  return { figure, amount, verdict, ...(margin && { margin }) }
}

const resultsFrom = (figure: Figure, outcome: Outcome<readonly Amount[]>): readonly (Result | NoResult)[] =>
  outcome.ok
    ? outcome.value.map((amount) => judged(figure, amount))
    : [{ figure, fault: outcome.fault.words }]

/** What these figures come to at a block, those of other kinds of block left out. */
export const resultsOf = (
  figures: readonly Figure[],
  lookup: Lookup,
  ground: Ground,
): readonly (Result | NoResult)[] =>
  figures
    .filter(({ on }) => on === lookup.block.kind)
    .flatMap((figure) => resultsFrom(figure, figure.amounts(lookup.block, lookup, ground)))

/** What a figure of one amount comes to where a block stands; undefined where it comes to nothing. */
export function resultOf(figure: PlainFigure, lookup: Lookup): Result | undefined {
  if (figure.on !== lookup.block.kind) return undefined
  const [first] = resultsFrom(figure, figure.amounts(lookup.block, lookup))
  return first && isResult(first) ? first : undefined
}
