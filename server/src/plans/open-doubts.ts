import type { Hypothesis } from '../engineering/alignment/hypothesis.ts'
import { allowsSteps, speaksAgainst } from '../engineering/alignment/mismatch.ts'
import { isLasting, slipKey } from '../engineering/alignment/slips.ts'
import type { Comparison, Held } from './held-against.ts'

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
  /** Where lifts were read last. */
  readonly liftsAt: number
  /** A move is noted. */
  readonly moved: boolean
}

const nothingMoved: Hypothesis = { type: 'nothing-moved' }

const hypothesesOf = ({ comparison: { mismatch } }: OpenDoubt): readonly Hypothesis[] =>
  mismatch.explanations.map(({ hypothesis }) => hypothesis)

/** Whether a comparison puts its later reading, or what the job says, in doubt. */
export const inDoubt = ({ mismatch }: Comparison): boolean => !allowsSteps(mismatch)

/** What is left of a doubt at a later whole reading. What is of one reading alone ends with that reading. What is not, a mirror, a thread, a circle,
 * stays open until readings speak against it that are themselves as the moves between them should have brought them; a foot that hangs, until lifts are
 * read. Where nothing explained it, a move that shows in such readings settles it. */
function leftOf(
  doubt: OpenDoubt,
  held: Held | undefined,
  { liftsAt, moved }: Pick<Meanwhile, 'liftsAt' | 'moved'>,
): OpenDoubt | undefined {
  // Where nothing was moved, nothing was tried.
  const sound = moved && held && !inDoubt(held.comparison) ? held : undefined
  const against = (of: Hypothesis) =>
    sound !== undefined && speaksAgainst(of, sound.readings, sound.comparison.mismatch)
  const { explanations } = doubt.comparison.mismatch
  if (explanations.length === 0) return against(nothingMoved) ? undefined : doubt
  const left = explanations.filter(({ hypothesis }) => {
    if (!isLasting(hypothesis)) return true
    return hypothesis.type === 'did-not-follow' && liftsAt >= doubt.place ? false : !against(hypothesis)
  })
  if (!left.some(({ hypothesis }) => isLasting(hypothesis))) return undefined
  if (left.length === explanations.length) return doubt
  const mismatch = { ...doubt.comparison.mismatch, explanations: left }
  return { ...doubt, comparison: withMismatch(doubt.comparison, mismatch) }
}

/** Its moves stay worked out when they are asked for. */
const withMismatch = (of: Comparison, mismatch: Comparison['mismatch']): Comparison =>
  Object.create(Object.getPrototypeOf(of), {
    ...Object.getOwnPropertyDescriptors(of),
    mismatch: { value: mismatch, enumerable: true },
  })

const keysOf = (doubt: OpenDoubt): readonly string[] => {
  const lasting = hypothesesOf(doubt).filter(isLasting).map(slipKey)
  return hypothesesOf(doubt).length === 0 ? ['unexplained'] : lasting
}

/** The doubts that are open at a whole reading, the newest last. One that a newer one holds as well is left out, so there are never more than there are
 * explanations. */
export function doubtsAt(
  before: readonly OpenDoubt[],
  held: Held | undefined,
  { place, liftsAt, moved }: Meanwhile,
): readonly OpenDoubt[] {
  const left = before.flatMap((doubt) => leftOf(doubt, held, { liftsAt, moved }) ?? [])
  if (!held || !inDoubt(held.comparison)) return left
  const again = before.some(({ comparison }) => comparison.since === held.comparison.since)
  const own: OpenDoubt = { comparison: held.comparison, place, again }
  const known = new Set(keysOf(own))
  return [...left.filter((doubt) => keysOf(doubt).some((key) => !known.has(key))), own]
}
