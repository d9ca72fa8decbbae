import type { FootCorrection } from '../../../engineering/alignment/feet.ts'

/** A coupling is brought near by straightedge before it is read by feeler: where a foot would go further than this (m). Common practice, no
 * source. */
export const nearByEye = 5e-3

/** How near (m) straightedge and rule have to bring it before it is read. Common practice, no source. */
export const roughlyAligned = 1e-3

/** Whether a foot is so far from where it is to stand that rough alignment comes first. */
export const isFarOff = (feet: readonly FootCorrection[]): boolean =>
  feet.some(
    ({ vertical, horizontal }) => Math.max(Math.abs(vertical.value), Math.abs(horizontal.value)) > nearByEye,
  )
