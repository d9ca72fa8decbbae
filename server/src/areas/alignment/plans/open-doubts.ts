import type { Hypothesis } from '../../../engineering/alignment/hypothesis.ts'
import { allowsSteps, speaksAgainst } from '../../../engineering/alignment/mismatch.ts'
import { hypothesisKey, isLasting } from '../../../engineering/alignment/suppositions.ts'
import { isRefuted } from './known-besides.ts'
import type { Comparison, ReadingComparison } from './reading-comparison.ts'

/** A comparison that put its later reading, or what the job says, in doubt, and that nothing read since has settled. Its explanations are those that
 * are left. */
export interface OpenDoubt {
  readonly comparison: Comparison
  /** Place of its later reading in the log. */
  readonly place: number
  /** An earlier reading was in doubt against the same one already, so reading again has settled nothing. */
  readonly again: boolean
}

/** What there was since the reading that the others are held against. */
interface Meanwhile {
  /** Of the reading in the log. */
  readonly place: number
  /** Where lifts of a foot were last read, and were fine. */
  readonly firmAt: ReadonlyMap<string, number>
  /** A move is noted. */
  readonly moved: boolean
}

const nothingMoved: Hypothesis = { type: 'nothing-moved' }

const hypothesesOf = ({ comparison: { mismatch } }: OpenDoubt): readonly Hypothesis[] =>
  mismatch.explanations.map(({ hypothesis }) => hypothesis)

/** Whether a comparison puts its later reading, or what the job says, in doubt. */
export const inDoubt = ({ mismatch }: Comparison): boolean => !allowsSteps(mismatch)

/** What is left of a doubt at a later whole reading. A reading that was stale, or taken too early, ends with the next. Places that are swapped in one
 * reading may be so in the next; that ends with one that agrees with the same earlier reading. What else is not of one reading alone, a mirror in both,
 * a thread, a circle, stays open until readings speak against it that are themselves as the moves between them should have brought them; a foot that
 * hangs, until its lift is read. Where nothing explained it, a move that shows in such readings settles it. */
function leftOf(
  doubt: OpenDoubt,
  held: ReadingComparison | undefined,
  { firmAt, moved }: Pick<Meanwhile, 'firmAt' | 'moved'>,
): OpenDoubt | undefined {
  const agreeing = held && !inDoubt(held.comparison) ? held : undefined
  // Where nothing was moved, nothing was tried.
  const sound = moved ? agreeing : undefined
  const against = (of: Hypothesis) =>
    sound !== undefined && speaksAgainst(of, sound.readings, sound.comparison.mismatch)
  const sameBase = agreeing?.comparison.since === doubt.comparison.since
  const isFirm = (foot: string) => (firmAt.get(foot) ?? -1) >= doubt.place
  const { explanations } = doubt.comparison.mismatch
  if (explanations.length === 0) return against(nothingMoved) ? undefined : doubt
  const left = explanations.filter(({ hypothesis: of }) => {
    if (!isLasting(of)) return true
    if (isRefuted(of, isFirm)) return false
    // Who swaps places once may do so each time.
    if ('swapped' in of && of.swapped === 'later') return !sameBase && !against({ ...of, swapped: 'both' })
    return !against(of)
  })
  if (!left.some(({ hypothesis }) => isLasting(hypothesis))) return undefined
  if (left.length === explanations.length) return doubt
  const mismatch = { ...doubt.comparison.mismatch, explanations: left }
  return { ...doubt, comparison: { ...doubt.comparison, mismatch } }
}

const keysOf = (doubt: OpenDoubt): readonly string[] => {
  const lasting = hypothesesOf(doubt).filter(isLasting).map(hypothesisKey)
  return hypothesesOf(doubt).length === 0 ? ['unexplained'] : lasting
}

/** The doubts that are open at a whole reading, the newest last. One that a newer one holds as well is left out, so there are never more than there are
 * explanations. */
export function doubtsAt(
  before: readonly OpenDoubt[],
  held: ReadingComparison | undefined,
  { place, firmAt, moved }: Meanwhile,
): readonly OpenDoubt[] {
  const left = before.flatMap((doubt) => leftOf(doubt, held, { firmAt, moved }) ?? [])
  if (!held || !inDoubt(held.comparison)) return left
  const again = before.some(({ comparison }) => comparison.since === held.comparison.since)
  const own: OpenDoubt = { comparison: held.comparison, place, again }
  const known = new Set(keysOf(own))
  return [...left.filter((doubt) => keysOf(doubt).some((key) => !known.has(key))), own]
}
