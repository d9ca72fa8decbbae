/** Bellows face seal: how far the bellows is squeezed. Lengths in m, measured along the shaft. */

const length = (name: string, value: number): number => {
  if (!(value > 0 && value <= 10))
    throw new RangeError(`${name} must be above zero and at most 10 m, not ${value}`)
  return value
}

/** Squeeze of the bellows, m: free length less fitted length. Negative means stretched. RangeError unless
 * both lengths are above zero and at most 10 m. Source: definition.
 * @example compression({ free: 0.148, fitted: 0.122 }) // ≈ 0.026 */
export const compression = (given: { readonly free: number; readonly fitted: number }): number =>
  length('free length', given.free) - length('fitted length', given.fitted)

/** Squeeze left when the shaft has moved `travel` forward (m, negative aft, less than 1), as thrust ahead
 * makes it: the rotor sits on the shaft forward of the bellows and goes with it. `stopped` is the squeeze at
 * rest, m, of either sign. RangeError on numbers that are neither.
 * @example compressionUnderThrust({ stopped: 0.026, travel: 0.002 }) // ≈ 0.024 */
export function compressionUnderThrust(given: { readonly stopped: number; readonly travel: number }): number {
  if (!(Math.abs(given.stopped) <= 10))
    throw new RangeError(`squeeze must be at most 10 m, not ${given.stopped}`)
  if (!(Math.abs(given.travel) < 1)) throw new RangeError(`travel must be less than 1 m, not ${given.travel}`)
  return given.stopped - given.travel
}

export type CompressionVerdict = 'within' | 'too-little' | 'too-much'

/** How a squeeze (m, of either sign) stands to the maker's `target` with its tolerance `plus` above and
 * `minus` below (m, target > 0, tolerances 0 or more). The ends are inside, to a nanometre: less is
 * arithmetic, not fitting. Too little leaks, too much wears. RangeError on a bad number.
 * @example judgeCompression(0.018, { target: 0.026, plus: 0.003, minus: 0.002 }) // 'too-little' */
export function judgeCompression(
  squeeze: number,
  band: { readonly target: number; readonly plus: number; readonly minus: number },
): CompressionVerdict {
  if (!(Math.abs(squeeze) <= 10)) throw new RangeError(`squeeze must be at most 10 m, not ${squeeze}`)
  const target = length('target', band.target)
  if (!(band.plus >= 0 && band.minus >= 0 && band.plus <= 10 && band.minus <= 10)) {
    throw new RangeError(`tolerances must be zero or more and at most 10 m, not +${band.plus}/-${band.minus}`)
  }
  if (squeeze < target - band.minus - 1e-9) return 'too-little'
  return squeeze > target + band.plus + 1e-9 ? 'too-much' : 'within'
}
