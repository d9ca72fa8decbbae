import type { AxisError } from './planes.ts'

/** One way of moving the machine sideways on its feet. */
export type Slide = {
  /** Of each foot, m, + to starboard. */
  readonly moves: readonly number[]
  /** What the axis is then off by. */
  readonly left: AxisError
}

/** A foot on its way sideways: m forward of the coupling face; how far (m) it can go, without it as far as is wanted. */
type SlidingFoot = { readonly x: number; readonly sideways?: number }

/** Less than a nanometre is none. */
const tiny = 1e-9

/** Thirtieths nearer than this are one. */
const alike = 1e-6

/** Ways of sliding that are tried at the most. */
const maxSlides = 240

/** Not at all, and by the whole correction. Where the holes do not let it go so far, in every way that leaves a slope of a thirtieth of what is
 * allowed, or two, or three (at most some 240 of them): the machine slides as one, as far as each foot can, and as near to the shaft as that
 * slope lets it. `error` is what the axis is off by sideways, `slopeAllowed` rad. [derived]
 * @example slidesOf([{ x: 0.2 }, { x: 0.6 }], { offset: 1e-3, slope: 0 }, 1e-3)[1].moves // [-1e-3, -1e-3] */
export function slidesOf(
  feet: readonly SlidingFoot[],
  error: AxisError,
  slopeAllowed: number,
): readonly Slide[] {
  const none = { moves: feet.map(() => 0), left: error }
  const aft = Math.min(...feet.map(({ x }) => x))
  /** The slide that leaves this slope and as little offset as the holes let it; undefined where they do not. */
  const leaving = (slope: number): Slide | undefined => {
    const turn = slope - error.slope
    let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    for (const { x, sideways = Number.POSITIVE_INFINITY } of feet) {
      const lever = turn * (x - aft)
      low = Math.max(low, -sideways - lever)
      high = Math.min(high, sideways - lever)
    }
    if (low > high + tiny) return undefined
    const stands = error.offset + error.slope * aft
    const atAft = Math.min(high, Math.max(low, slope * aft - stands))
    return {
      moves: feet.map(({ x }) => clean(atAft + turn * (x - aft))),
      left: { offset: clean(stands + atAft - slope * aft), slope: clean(slope) },
    }
  }
  const whole = leaving(0)
  if (whole && Math.abs(whole.left.offset) <= tiny)
    return whole.moves.every((across) => Math.abs(across) <= tiny) ? [none] : [none, whole]
  const thirtieth = slopeAllowed / 30
  const least = Math.min(error.slope, -slopeAllowed) / thirtieth
  const most = Math.max(error.slope, slopeAllowed) / thirtieth
  // Counted from zero, so that a machine and its image in a mirror have the same; the last bits of a double add none.
  const stride = Math.max(1, Math.ceil((most - least) / maxSlides - alike))
  const from = Math.floor(least / stride + alike)
  const to = Math.ceil(most / stride - alike)
  const part = Array.from({ length: to - from + 1 }, (_, i) => leaving((from + i) * stride * thirtieth))
  return [none, ...part, whole].filter((slide) => slide !== undefined)
}

const clean = (value: number): number => (Math.abs(value) <= tiny ? 0 : value)
