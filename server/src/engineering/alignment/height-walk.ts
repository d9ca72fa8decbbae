/** Looking through pairs of heights of the two end stations of a machine, those that promise most first. Offsets and slopes stand here as
 * shares of what is allowed: 1 is on a limit. Heights m, + up. */
import type { Heights } from '../adjuster-heights.ts'
import type { AxisError } from './planes.ts'

/** Shares nearer than this are the same, and heights (m) nearer than this are one. */
export const tiny = 1e-9

/** What heights of the end stations leave in the vertical plane: `still + aft a + fore f`, the stations between on the line of the ends. */
export type Leaves = { readonly still: AxisError; readonly aft: AxisError; readonly fore: AxisError }

/** A station between the ends: how far on its way from aft to fore (0 to 1) it stands, and between what (m) it may come to stand. */
export type Between = { readonly share: number; readonly low: number; readonly high: number }

/** How far off a result is, from the shares of both planes: the greater of offset and slope, or both together. */
export type Measure = 'used' | 'away'

export type Walk = {
  readonly leaves: Leaves
  /** What is left sideways. */
  readonly across: AxisError
  readonly measure: Measure
  readonly aft: Heights
  readonly fore: Heights
  readonly between: readonly Between[]
}

/** Where the next pair can lie that the stations between can follow: heights of the fore end, from `above` up or from `below` down. */
export type Gap = { readonly above: number; readonly below: number }

/** Measures (shares of the limits) of an axis off by `off` upright and `across` sideways.
 * @example measured('used', { offset: 0.3, slope: 0 }, { offset: 0.4, slope: 0.1 }) // 0.5 */
export const measured = (measure: Measure, off: AxisError, across: AxisError): number =>
  measuredShares(measure, off.offset, off.slope, across)

/** The same without an object for each of the many that are looked at, nor `Math.hypot`, which takes many times as long. */
function measuredShares(measure: Measure, offset: number, slope: number, across: AxisError): number {
  const offsets = offset * offset + across.offset * across.offset
  const slopes = slope * slope + across.slope * across.slope
  return Math.sqrt(measure === 'used' ? Math.max(offsets, slopes) : offsets + slopes)
}

/** Visits the pairs of end heights that may measure no more than `most()` (asked anew each time), those that promise most first; `visit` says
 * where to go on when the stations between cannot follow. Minus infinity ends the walk. What a pair leaves is linear in its heights, so its
 * measure is convex: away from the best place it only grows, and the first pair that promises too little on either side ends that side. [derived]
 * @example walkHeights({ leaves: { still: { offset: 0, slope: 1 }, aft: { offset: 1, slope: 0 }, fore: { offset: 0, slope: 1 } }, across: { offset: 0,
 * slope: 0 }, measure: 'used', aft: stepHeights(0.1), fore: stepHeights(0.1), between: [] }, () => -Infinity, () => undefined) // undefined */
export function walkHeights(
  walk: Walk,
  most: () => number,
  visit: (aft: number, fore: number) => Gap | undefined,
): void {
  const { leaves, across, measure, aft, fore, between } = walk
  const [lowAft, highAft, lowFore, highFore] = [
    aft.from(-far),
    aft.upTo(far),
    fore.from(-far),
    fore.upTo(far),
  ]
  if (lowAft === undefined || highAft === undefined || lowFore === undefined || highFore === undefined) return
  const at = (a: number, f: number): number =>
    measuredShares(
      measure,
      leaves.still.offset + leaves.aft.offset * a + leaves.fore.offset * f,
      leaves.still.slope + leaves.aft.slope * a + leaves.fore.slope * f,
      across,
    )
  /** The best height of the fore end for one of the aft end, whether the adjuster has it or not, and the least that it promises;
   * `apart` where no height of it would do for the stations between. */
  const bestFore = (
    a: number,
  ): { readonly height: number; readonly promise: number; readonly apart: number } => {
    let [low, high] = [lowFore, highFore]
    for (const { share, low: from, high: to } of between) {
      low = Math.max(low, (from - a * (1 - share)) / share)
      high = Math.min(high, (to - a * (1 - share)) / share)
    }
    const apart = Math.max(0, low - high - tiny)
    const free = lowest((f) => at(a, f), turningPoints(walk, a))
    const height = apart > 0 ? (low + high) / 2 : Math.min(Math.max(free, low), Math.max(low, high))
    return { height, promise: at(a, height), apart }
  }
  const steep = (a: number): number => {
    const { promise, apart } = bestFore(a)
    return promise + apart * hopeless
  }
  const promised = (a: number): number => {
    const { promise, apart } = bestFore(a)
    return apart > 0 ? Number.POSITIVE_INFINITY : promise
  }
  outward(aft, valley(steep, lowAft, highAft, upright(leaves)), promised, most, (a) => {
    outward(
      fore,
      bestFore(a).height,
      (f) => at(a, f),
      most,
      (f) => visit(a, f),
    )
    return undefined
  })
}

/** Farther (m) than any foot goes. */
const far = 100

/** What a metre that is missing between the stations adds to a promise. */
const hopeless = 1e12

/** Heights of the fore end where the measure may turn: offset or slope zero, both the same, or their sum of squares least. */
function turningPoints({ leaves, across, measure }: Walk, a: number): readonly number[] {
  const [po, ps] = [leaves.fore.offset, leaves.fore.slope]
  const [co, cs] = [leaves.still.offset + leaves.aft.offset * a, leaves.still.slope + leaves.aft.slope * a]
  if (measure === 'away') return [-(co * po + cs * ps) / (po * po + ps * ps)]
  // (co + po f)² + across.offset² = (cs + ps f)² + across.slope²
  const [A, B, C] = [
    po * po - ps * ps,
    co * po - cs * ps,
    co * co + across.offset ** 2 - cs * cs - across.slope ** 2,
  ]
  const root = Math.sqrt(Math.max(0, B * B - A * C))
  const q = B >= 0 ? -B - root : -B + root
  return [-co / po, -cs / ps, q / A, C / q].filter(Number.isFinite)
}

/** Which of some places is the lowest. */
function lowest(at: (x: number) => number, places: readonly number[]): number {
  let [best, least] = [places[0] ?? 0, Number.POSITIVE_INFINITY]
  for (const place of places) {
    const level = at(place)
    if (level < least) [best, least] = [place, level]
  }
  return best
}

/** Height of the aft end that sets the axis right, with the fore end doing its part. */
function upright({ still, aft, fore }: Leaves): number {
  const whole = aft.offset * fore.slope - fore.offset * aft.slope
  return (fore.offset * still.slope - still.offset * fore.slope) / whole
}

const golden = (Math.sqrt(5) - 1) / 2

/** Where a convex function is least between two places: at `guess` where it is no less to either side, else downhill from there by strides that
 * double, and then by the golden section. */
function valley(at: (x: number) => number, from: number, to: number, guess: number): number {
  const within = (x: number) => Math.min(Math.max(x, from), to)
  const near = within(guess)
  const level = at(near)
  const downhill = [1e-7, -1e-7].find((by) => within(near + by) !== near && at(near + by) < level)
  if (downhill === undefined) return near
  let reach = downhill
  while (
    within(near + 2 * reach) !== within(near + reach) &&
    at(within(near + 2 * reach)) < at(within(near + reach))
  )
    reach *= 2
  let [low, high] = [near, within(near + 2 * reach)].sort((a, b) => a - b) as [number, number]
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)]
  let [atA, atB] = [at(a), at(b)]
  while (high - low > tiny) {
    if (atA <= atB) {
      high = b
      ;[b, atB] = [a, atA]
      a = high - golden * (high - low)
      atA = at(a)
    } else {
      low = a
      ;[a, atA] = [b, atB]
      b = low + golden * (high - low)
      atB = at(b)
    }
  }
  return (low + high) / 2
}

/** Visits heights outward from `start`, the one that promises more of the next two first, until neither promises enough. */
function outward(
  heights: Heights,
  start: number,
  promise: (height: number) => number,
  most: () => number,
  visit: (height: number) => Gap | undefined,
): void {
  const none = Number.POSITIVE_INFINITY
  const placed = (height: number | undefined) =>
    height === undefined ? { height: 0, promise: none } : { height, promise: promise(height) }
  let up = placed(heights.from(start))
  let down = placed(heights.upTo(Math.min(start, up.promise < none ? up.height - 3 * tiny : start)))
  while (Math.min(up.promise, down.promise) <= most() && Math.min(up.promise, down.promise) < none) {
    if (up.promise <= down.promise) {
      const gap = visit(up.height)
      up = placed(heights.from(Math.max(up.height + 3 * tiny, gap?.above ?? up.height)))
    } else {
      const gap = visit(down.height)
      down = placed(heights.upTo(Math.min(down.height - 3 * tiny, gap?.below ?? down.height)))
    }
  }
}
