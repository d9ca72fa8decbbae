import { type Margin, marginTo, type Verdict, verdictOn } from '../../quantity/conformity.ts'
import type { Lookup } from '../../store/lookup.ts'
import type { Amount, Figure } from './figure.ts'

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

/** What these figures come to at a block, those of other kinds of block left out. */
export const resultsOf = (figures: readonly Figure[], lookup: Lookup): readonly (Result | NoResult)[] =>
  figures
    .filter(({ on }) => on === lookup.block.kind)
    .flatMap((figure): readonly (Result | NoResult)[] => {
      const outcome = figure.amounts(lookup.block, lookup)
      return outcome.ok
        ? outcome.value.map((amount) => judged(figure, amount))
        : [{ figure, fault: outcome.fault.words }]
    })

/** What a figure of one amount comes to where a block stands; undefined where it comes to nothing. */
export function resultOf(figure: Figure, lookup: Lookup): Result | undefined {
  const [first] = resultsOf([figure], lookup)
  return first && isResult(first) ? first : undefined
}
