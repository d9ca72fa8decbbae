import { reaches } from '../engineering/compare.ts'
import { type Block, factOf, type Value } from '../job/model.ts'
import type { Band } from '../quantity/band.ts'
import { formatBandWith, formatSi } from '../quantity/format.ts'
import { formatShare } from '../quantity/format-measures.ts'
import type { Kind } from '../quantity/kinds.ts'
import type { Lookup } from '../store/lookup.ts'
import type { BlockName, FactPath, FactValue } from '../vocabulary/index.ts'
import { at, commonPractice, type ForPlan, type Reported, type Severity, type Source } from './check.ts'

/** A rule between facts, which no real job breaks. Its row is all there is of it: the check, the page and the tests follow. */
export interface Relation {
  /** Names it, for tests. */
  readonly id: string
  readonly on: BlockName
  /** The facts it is between, the one where its finding stands first. */
  readonly facts: readonly FactPath[]
  /** As a sentence, for the page. */
  readonly rule: string
  readonly why: string
  readonly source: Source
  readonly severity: Severity
  /** What a finding means for an alignment plan made from its block. */
  readonly plan?: ForPlan
  readonly broken: (lookup: Lookup) => readonly Reported[]
}

/** A fact of the block that goes with the one that is looked at. */
export function near<P extends FactPath>(lookup: Lookup, path: P): Value<FactValue<P>> | undefined {
  const block: Block | undefined = lookup.near(path.slice(0, path.indexOf('.')) as BlockName)
  return block && factOf(block, path)
}

/** Findings of the relations of a table, at the block that is looked at. */
export const brokenIn = (table: readonly Relation[], lookup: Lookup): readonly Reported[] =>
  table
    .filter(({ on }) => on === lookup.block.kind)
    .flatMap(({ severity, source, plan, broken }) =>
      broken(lookup).map((found) => ({ severity, source, ...(plan && { plan }), ...found })),
    )

/** In the job's own units alone: a line that holds two figures has no room for both systems. */
export const shown = ({ system }: Lookup, si: number, kind: Kind): string => formatSi(si, kind, system)

/** Whether a figure is outside its bounds, the last bits of a double aside. */
export const isOutside = (value: number, { low, high }: Band): boolean =>
  (low !== undefined && !reaches(value, low)) || (high !== undefined && !reaches(high, value))

/** A bound far outside what is built. It finds slips of a digit or a unit, and judges no design. */
export const practice = (bound: string): Source => commonPractice(`${bound}: common practice, no source`)

interface Off {
  readonly found: string
  readonly limit: string
  readonly message: string
  readonly detail?: string
  /** The other facts, with words for each. */
  readonly besides?: readonly (readonly [Value<unknown>, string])[]
}

/** A finding at a fact that breaks a relation. */
export const off = (value: Value<unknown>, { besides = [], ...words }: Off): readonly Reported[] => [
  at(value, {
    ...words,
    todo: besides.length > 0 ? 'Check both figures and their units.' : 'Check the figure and its unit.',
    related: besides.map(([other, message]) => ({ at: other.at, message })),
  }),
]

/** The amount of a fact; of a size with a tolerance its nominal one, of limits the upper one. */
const amountOf = ({ value }: Value<unknown>): number => {
  if (typeof value === 'number') return value
  const { nominal, high = Number.NaN } = value as Band & { readonly nominal?: number }
  return nominal ?? high
}

/** A relation of one amount to another. */
interface Between extends Omit<Relation, 'facts' | 'broken'> {
  readonly fact: FactPath
  readonly kind: Kind
  readonly other: FactPath
  readonly otherKind?: Kind
  readonly otherWords: string
  /** What the one may be beside the other, SI. */
  readonly sides: (other: number) => Band
  readonly message: (found: string, other: string) => string
}

export const between = ({
  fact,
  kind,
  other,
  otherKind = kind,
  otherWords,
  sides,
  message,
  ...row
}: Between): Relation => ({
  ...row,
  facts: [fact, other],
  broken: (lookup) => {
    const [value, beside] = [near(lookup, fact), near(lookup, other)]
    if (!value || !beside) return []
    const bounds = sides(amountOf(beside))
    if (!isOutside(amountOf(value), bounds)) return []
    const found = shown(lookup, amountOf(value), kind)
    return off(value, {
      found,
      limit: lookup.showBand(bounds, kind),
      message: message(found, shown(lookup, amountOf(beside), otherKind)),
      besides: [[beside, otherWords]],
    })
  },
})

/** A bound on one amount. */
interface Alone extends Omit<Relation, 'facts' | 'broken'> {
  readonly fact: FactPath
  readonly kind: Kind
  readonly bounds: Band
  readonly message: (found: string) => string
  readonly detail?: string
}

export const alone = ({ fact, kind, bounds, message, detail, ...row }: Alone): Relation => ({
  ...row,
  facts: [fact],
  broken: (lookup) => {
    const value = near(lookup, fact)
    if (!value) return []
    const amount = amountOf(value)
    if (!isOutside(amount, bounds)) return []
    const show = (si: number) => (kind === 'ratio' ? formatShare(si, 4) : shown(lookup, si, kind))
    const found = show(amount)
    return off(value, {
      found,
      limit: formatBandWith(bounds, show),
      message: message(found),
      ...(detail && { detail }),
    })
  },
})
