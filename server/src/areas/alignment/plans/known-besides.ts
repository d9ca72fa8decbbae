import type { Hypothesis } from '../../../engineering/alignment/hypothesis.ts'
import type { Explanation, Mismatch } from '../../../engineering/alignment/mismatch.ts'

/** What the log says of a reading besides how the flange stands. */
export interface KnownBesides {
  /** Lifts read after the last move show that this foot is not soft. */
  readonly isFirm: (foot: string) => boolean
  /** Name of the earlier reading that has the same figures to the digit. */
  readonly copyOf?: string
}

/** Whether a foot is said to hang that lifts show to stand. */
export const isRefuted = (of: Hypothesis, isFirm: KnownBesides['isFirm']): boolean =>
  of.type === 'did-not-follow' && of.feet.every(isFirm)

const notAsNoted = ({ hypothesis, chiSquare }: Explanation): readonly Explanation[] =>
  'feet' in hypothesis ? [{ hypothesis: { type: 'not-as-noted', feet: hypothesis.feet }, chiSquare }] : []

/** The explanations that are left with what is known besides. Where nothing is left of feet that hang, their moves were not made as noted. */
export function withKnown(mismatch: Mismatch, { isFirm, copyOf }: KnownBesides): Mismatch {
  if (mismatch.noise) return mismatch
  const { explanations } = mismatch
  const left = explanations.filter(({ hypothesis }) => !isRefuted(hypothesis, isFirm))
  const copy: readonly Explanation[] =
    copyOf === undefined ? [] : [{ hypothesis: { type: 'copied', from: copyOf }, chiSquare: 0 }]
  const others = left.length > 0 || copy.length > 0 ? left : explanations.flatMap(notAsNoted)
  return { ...mismatch, explanations: [...copy, ...others] }
}
