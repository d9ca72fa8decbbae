import type { Source } from '../../checks/check.ts'
import type { Block } from '../../job/model.ts'
import type { Band } from '../../quantity/band.ts'
import type { Bound } from '../../quantity/conformity.ts'
import type { Kind } from '../../quantity/kinds.ts'
import { OutOfRange } from '../../quantity/out-of-range.ts'
import type { Lookup } from '../../store/lookup.ts'
import { plan } from '../../store/plan.ts'
import type { BlockName } from '../../vocabulary/index.ts'
import { failed, type Outcome, ok } from './outcome.ts'
import type { Ground } from './view.ts'

/** A number that a plan has worked out, SI. */
export interface Amount {
  readonly value: number
  /** Expanded uncertainty U, k = 2. Absent where the value has none that is known. */
  readonly uncertainty?: number
  /** Beyond the ends of a table the value is only a bound. */
  readonly bound?: Bound
  readonly limit?: Band
  readonly limitFrom?: string
  /** Why it proves nothing, whatever its value: the readings disagree, say. */
  readonly doubt?: string
  /** How it comes about in this job: `table 5; machinery space 0.85`. */
  readonly from?: string
  /** Where what it is worked out from is published, besides the source of its figure. */
  readonly sources?: readonly string[]
  /** What it depends on that the job does not say. */
  readonly assumptions?: readonly string[]
  /** What tells it from the other amounts of its figure, by name: `{ foot: 'aft-port' }`. */
  readonly key?: Readonly<Record<string, string>>
  /** Where it is along `over`, SI. */
  readonly at?: number
}

/** A computed number, declared once for everything that shows it. */
interface Declared {
  /** `part/slug`, as checks have it: `cable/ampacity`. */
  readonly id: string
  /** The kind of block that it is of. */
  readonly on: BlockName
  /** In a few words, as the head of a row. */
  readonly title: string
  readonly kind: Kind
  /** The unit in JSON and CSV, where it is not the usual one of its kind. */
  readonly unit?: string
  /** What it is, with the sign convention. */
  readonly doc: string
  /** How it is worked out; absent where it is as written. */
  readonly formula?: string
  /** Where the formula or the limit is from. */
  readonly source: Source
  /** What its amounts are told apart by, where there may be several: `foot`. */
  readonly keys?: readonly string[]
  /** What its amounts go along, where they are a series: speed, the length of the shaft. */
  readonly over?: { readonly title: string; readonly kind: Kind }
}

/** Absent amounts: it does not apply here. */
type Amounts = Amount | readonly Amount[] | undefined

export interface Figure extends Declared {
  /** Its amounts at a block, or why there are none. */
  readonly amounts: (block: Block, lookup: Lookup, ground: Ground) => Outcome<readonly Amount[]>
}

/** A figure that does not depend on what was found in the file. */
export interface PlainFigure extends Figure {
  readonly amounts: (block: Block, lookup: Lookup) => Outcome<readonly Amount[]>
}

/** Declares a figure: `from` is the plan that works it out, `of` takes its amounts from what the plan came to. */
export function figure<R>({
  from,
  of,
  ...declared
}: Declared & {
  readonly from: (block: Block, lookup: Lookup) => Outcome<R>
  readonly of: (result: R, lookup: Lookup) => Amounts
}): PlainFigure {
  const amounts = plan(
    (block: Block, lookup: Lookup): Outcome<readonly Amount[]> =>
      amountsOf(
        () => from(block, lookup),
        (result) => of(result, lookup),
      ),
  )
  return { ...declared, amounts }
}

/** The same from what findings may stand in the way of. It is not kept: they are not among what a plan reads. */
export const figureOnceChecked = <R>({
  from,
  of,
  ...declared
}: Declared & {
  readonly from: (block: Block, lookup: Lookup, ground: Ground) => Outcome<R>
  readonly of: (result: R, lookup: Lookup) => Amounts
}): Figure => ({
  ...declared,
  amounts: (block, lookup, ground) =>
    amountsOf(
      () => from(block, lookup, ground),
      (result) => of(result, lookup),
    ),
})

function amountsOf<R>(from: () => Outcome<R>, of: (result: R) => Amounts): Outcome<readonly Amount[]> {
  try {
    const outcome = from()
    return outcome.ok ? ok(toldApart(listOf(of(outcome.value)))) : outcome
  } catch (error) {
    if (error instanceof OutOfRange) return failed({ type: 'impossible', words: error.message })
    throw error
  }
}

/** Two feet of one name have one key: the second gets a number. */
function toldApart(amounts: readonly Amount[]): readonly Amount[] {
  const used = new Map<string, number>()
  return amounts.map((amount) => {
    const { key, at } = amount
    const name = JSON.stringify([key, at])
    const count = (used.get(name) ?? 0) + 1
    used.set(name, count)
    if (!key || count === 1) return amount
    const numbered = Object.entries(key).map(([by, value]) => [by, `${value}~${count}`] as const)
    return { ...amount, key: Object.fromEntries(numbered) }
  })
}

/** The same from a plan that may come to nothing. `unknown`: what is then said, as a sentence. Without it the figure does not apply there. */
export const figureWhereKnown = <R>({
  from,
  of,
  unknown,
  ...declared
}: Declared & {
  readonly from: (block: Block, lookup: Lookup) => R | undefined
  readonly of: (result: R, lookup: Lookup) => Amounts
  readonly unknown?: string
}): PlainFigure =>
  figure({
    ...declared,
    from: (block, lookup) => {
      const result = from(block, lookup)
      return result === undefined && unknown !== undefined
        ? failed({ type: 'unsaid', words: unknown })
        : ok(result)
    },
    of: (result, lookup) => (result === undefined ? undefined : of(result, lookup)),
  })

const listOf = (amounts: Amounts): readonly Amount[] =>
  amounts === undefined ? [] : isList(amounts) ? amounts : [amounts]

const isList = (amounts: Amount | readonly Amount[]): amounts is readonly Amount[] => Array.isArray(amounts)
