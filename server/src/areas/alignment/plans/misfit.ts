import type { BlockId } from '../../../store/block-id.ts'

/** How far what is noted of the feet is off what one stiff machine can do. */
export interface Misfit {
  /** All that add up to it, as they are written. */
  readonly moves: readonly BlockId[]
  /** How far each foot is off, m. */
  readonly feet: readonly { readonly name: string; readonly off: number }[]
  /** m */
  readonly limit: number
}

/** The feet that are off by more than the limit. */
export const feetBeyond = ({ feet, limit }: Misfit): Misfit['feet'] =>
  feet.filter(({ off }) => Math.abs(off) > limit * (1 + 1e-9))

/** The most that any foot is off, m. */
export const mostOff = ({ feet }: Misfit): number => Math.max(...feet.map(({ off }) => Math.abs(off)))
