import type { Entry, Span } from '../syntax/tree.ts'
import { dashesIn, touchingMinus } from './dashes.ts'
import type { NumberContext } from './meanings.ts'
import type { BindingProblem } from './model.ts'
import { separatedNumbers } from './separated-numbers.ts'
import { touchingSign } from './touching-sign.ts'

interface Misread {
  readonly span: Span
  readonly problem: BindingProblem
}

/** What in the numbers of a value could be read in another way than it is meant. Such a value is not read. */
export function misreadIn(entries: readonly Entry[], given: NumberContext): readonly Misread[] {
  const separated = separatedNumbers(entries, given)
  if (separated.length > 0) return separated
  // A designation may have dashes: it is told to put it in quotes.
  if (given.fact.shape.mayQuote) return []
  const dashes = dashesIn(entries, given)
  if (dashes.length > 0) return dashes.map((span) => ({ span, problem: { type: 'dash' } }))
  const touching = touchingSign(entries, given.text)
  if (touching) return [{ span: touching, problem: { type: 'sign-touches' } }]
  const minus = touchingMinus(entries, given)
  return minus ? [{ span: minus, problem: { type: 'minus-touches' } }] : []
}
