import { type Band, holds } from '../quantity/band.ts'
import { inRange } from './guard.ts'

/** Squeeze of the bellows of a face seal, m, along the shaft: free length less fitted length (1 µm to 10 m each, else OutOfRange). Negative means
 * stretched. Source: definition.
 * @example compression({ free: 0.148, fitted: 0.122 }) // ≈ 0.026 */
export const compression = (given: { readonly free: number; readonly fitted: number }): number =>
  inRange('free length (m)', given.free, 1e-6, 10) - inRange('fitted length (m)', given.fitted, 1e-6, 10)

/** Whether a bellows is squeezed (m, + shorter) as is wanted. Where only the most is said it still has to be squeezed: at its free length nothing
 * presses the faces together. Source: common practice, no source.
 * @example squeezedAsWanted(0, { high: 0.029 }) // false */
export const squeezedAsWanted = (squeeze: number, wanted: Band): boolean =>
  holds(wanted, squeeze) && (wanted.low !== undefined || squeeze > 1e-9)
