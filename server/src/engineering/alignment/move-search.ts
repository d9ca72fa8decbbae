import { exactly, type Uncertain } from '../../quantity/uncertainty.ts'
import { inRange } from '../guard.ts'
import type { Result } from '../result.ts'
import { type FeetProblem, type Foot, oneStation } from './feet.ts'
import type { InPlanes } from './planes.ts'
import { type RigidMove, rigidMachine } from './rigid-move.ts'

/** What the machine axis is off by in one plane: offset (m) at the coupling, slope (rad). */
export type AxisError = { readonly offset: number; readonly slope: number }

/** A foot with what its adjuster can do. */
export type AdjustableFoot = Foot & {
  /** Heights (m, + raise) it can be moved by, ascending, within `reach` of the correction asked for; 0 among them where it can be
   * left alone. */
  readonly heights: (around: number, reach: number) => readonly number[]
  /** Farthest (m) it can be moved sideways; without it, as far as is wanted. */
  readonly sideways?: number
}

export type SearchProblem = {
  readonly feet: readonly AdjustableFoot[]
  /** Axis less target. */
  readonly error: InPlanes<AxisError>
  /** Largest offset (m) and slope (rad) allowed, each on the two planes together. */
  readonly limit: AxisError
  /** Share of the limits that a result may use up to be good enough, above 0 to 1. */
  readonly goal: number
  /** Farthest (m) a foot between the end ones may stand off the line of the others. */
  readonly stray: number
}

/** Moves of the feet, in their order, m. `used`: share of the limits that is then used up, 1 on a limit. */
export type ChosenMoves = {
  readonly moves: readonly InPlanes<number>[]
  readonly left: InPlanes<AxisError>
  readonly used: number
  readonly touched: number
}

const tiny = 1e-9

type Station = {
  readonly x: number
  readonly feet: readonly number[]
  /** What a unit of height at this station does to the axis. */
  readonly per: AxisError
  /** The move that would set the axis right. */
  readonly wanted: number
}

/** Share of the limits that errors in the two planes use up: the greater of the offsets' and the slopes'. 1 is on a limit.
 * @example shareUsed(inBothPlanes(() => ({ offset: 3e-5, slope: 0 })), { offset: 1e-4, slope: 1e-3 }) // ≈ 0.4243 */
export const shareUsed = ({ vertical, horizontal }: InPlanes<AxisError>, limit: AxisError): number =>
  Math.max(
    Math.hypot(vertical.offset, horizontal.offset) / inRange('offset allowed (m)', limit.offset, 1e-9, 100),
    Math.hypot(vertical.slope, horizontal.slope) / inRange('slope allowed (rad)', limit.slope, 1e-9, 10),
  )

/** How far off both limits together a result is: root of the squares of the shares. Outside, where the greater share alone would let the other
 * grow to the same size. */
const shareAway = ({ vertical, horizontal }: InPlanes<AxisError>, limit: AxisError): number =>
  Math.hypot(
    Math.hypot(vertical.offset, horizontal.offset) / limit.offset,
    Math.hypot(vertical.slope, horizontal.slope) / limit.slope,
  )

/** The moves of the feet that serve best, out of all that the adjusters can do: those within `goal` of the limits come first,
 * then those inside the limits by how little they use up, then the others by how far off both limits together they are; among those within the goal the fewest feet
 * touched, then the least used up, then the least movement. The feet that are loosened anyway go to where the result is best: a nut turned half a
 * flat more costs nothing, another round of readings does.
 *
 * Exact: every pair of heights of the two end stations that could be better than the corrections taken to the nearest height is tried.
 * Feet of one station move alike, so the roll stays as it is; feet between the end ones follow to the nearest height they
 * have, within `stray` of the line. Sideways the machine slides: by the whole correction, as far as the feet can go, or not
 * at all. m, rad; + up, + to starboard. Feet at one station or in one oblique line come back as a problem, like no heights at
 * all that go together (`no-heights`); bad numbers are RangeErrors. [derived]
 * @example searchMoves({ feet: [{ name: 'aft', x: 0.2, y: 0 }, { name: 'fwd', x: 0.6, y: 0 }].map((foot) => ({ ...foot,
 * heights: () => [0, 1e-4, 2e-4, 3e-4] })), error: { vertical: { offset: 0, slope: -5e-4 }, horizontal: { offset: 0, slope: 0 } },
 * limit: { offset: 1e-4, slope: 1e-3 }, goal: 0.1, stray: 1e-5 }).value.moves[1].vertical // 0.0003 */
export function searchMoves(
  problem: SearchProblem,
): Result<ChosenMoves, FeetProblem | { readonly type: 'no-heights' }> {
  const { feet, error, limit } = problem
  const goal = inRange('goal', problem.goal, 1e-6, 1)
  const stray = inRange('stray (m)', problem.stray, 0, 1)
  const machine = rigidMachine(feet)
  if (!machine.ok) return machine
  const stations = stationsOf(feet, machine.value, error.vertical)
  const slides = slidesOf(stations, feet, error.horizontal, limit)

  const weigh = (
    heights: readonly number[],
    slide: Slide,
    unlessWorseThan?: Candidate,
  ): Candidate | undefined => {
    const left = { vertical: after(error.vertical, stations, heights), horizontal: slide.left }
    const used = shareUsed(left, limit)
    // Most are out of the question by this alone.
    if (unlessWorseThan && used > Math.max(goal, atMost(unlessWorseThan.used)) + tiny) return undefined
    let touched = 0
    let movement = 0
    stations.forEach((station, s) => {
      const height = Math.abs(heights[s] ?? 0)
      for (const foot of station.feet) {
        const across = Math.abs(slide.moves[foot] ?? 0)
        if (height > tiny || across > tiny) touched += 1
        movement += height + across
      }
    })
    return { heights, slide, left, used, away: shareAway(left, limit), touched, movement }
  }
  /** The best of the pairs of end heights within what a result that uses up `share` of the limits needs. */
  const bestWithin = (share: number): Candidate | undefined => {
    const reach = (x: number) => share * (limit.offset + Math.abs(x) * limit.slope) + 3 * stray + tiny
    let best: Candidate | undefined
    for (const heights of lines(stations, feet, reach, stray))
      for (const slide of slides) {
        const candidate = weigh(heights, slide, best)
        if (candidate && (!best || compare(candidate, best, goal) < 0)) best = candidate
      }
    return best
  }
  // A first result shows how far to look: nothing that uses up more of the limits can be better.
  for (let share = Math.max(goal, 1); share < 1e6; share *= 4) {
    const first = bestWithin(share)
    if (!first) continue
    const best = atMost(first.used) > share ? bestWithin(atMost(first.used)) : first
    return { ok: true, value: chosen(best ?? first, stations, feet.length) }
  }
  return { ok: false, problem: { type: 'no-heights' } }
}

/** One way of moving sideways: of each foot, and what it leaves. */
type Slide = { readonly moves: readonly number[]; readonly left: AxisError }

type Candidate = {
  /** Of each station, m. */
  readonly heights: readonly number[]
  readonly slide: Slide
  readonly left: InPlanes<AxisError>
  readonly used: number
  readonly away: number
  readonly touched: number
  readonly movement: number
}

type Move = (moves: readonly InPlanes<Uncertain>[]) => RigidMove

const alone = (vertical: number, horizontal: number): InPlanes<Uncertain> => ({
  vertical: exactly(vertical),
  horizontal: exactly(horizontal),
})

/** Feet by station, from aft. */
function stationsOf(feet: readonly AdjustableFoot[], machine: Move, error: AxisError): readonly Station[] {
  const groups: { readonly x: number; readonly feet: number[] }[] = []
  for (const [i, { x }] of [...feet.entries()].sort(([, a], [, b]) => a.x - b.x)) {
    const last = groups.at(-1)
    if (last && x - last.x < oneStation) last.feet.push(i)
    else groups.push({ x, feet: [i] })
  }
  return groups.map(({ x, feet: members }) => {
    // A metre, because the axis moves in proportion: what it does for one it does for any height.
    const { vertical } = machine(feet.map((_, i) => alone(members.includes(i) ? 1 : 0, 0)))
    const per = { offset: vertical.offset.value, slope: vertical.slope.value }
    return { x, feet: members, per, wanted: -(error.offset + error.slope * x) }
  })
}

/** Not at all, and by the whole correction. Where the holes do not let it go so far, in every way that leaves a slope of a thirtieth of what is
 * allowed, or two, or three: the machine slides as one, as far as each foot can, and as near to the shaft as that slope lets it. */
function slidesOf(
  stations: readonly Station[],
  feet: readonly AdjustableFoot[],
  error: AxisError,
  limit: AxisError,
): readonly Slide[] {
  const none = { moves: feet.map(() => 0), left: error }
  const reach = stations.map(({ feet: members }) =>
    Math.min(...members.map((i) => feet[i]?.sideways ?? Number.POSITIVE_INFINITY)),
  )
  const aft = stations[0]?.x ?? 0
  /** The slide that leaves this slope and as little offset as the holes let it; undefined where they do not. */
  const leaving = (slope: number): Slide | undefined => {
    const turn = slope - error.slope
    const [low, high] = stations.reduce(
      ([from, to], { x }, s) => {
        const lever = turn * (x - aft)
        const can = reach[s] ?? 0
        return [Math.max(from, -can - lever), Math.min(to, can - lever)]
      },
      [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
    )
    if (low > high + tiny) return undefined
    const wanted = slope * aft - (error.offset + error.slope * aft)
    const atAft = Math.min(high, Math.max(low, wanted))
    const offset = error.offset + error.slope * aft + atAft - slope * aft
    const moves = feet.map((foot) => clean(atAft + turn * (foot.x - aft)))
    return { moves, left: { offset: clean(offset), slope: clean(slope) } }
  }
  const whole = leaving(0)
  if (whole && Math.abs(whole.left.offset) <= tiny)
    return whole.moves.every((across) => Math.abs(across) <= tiny) ? [none] : [none, whole]
  const thirtieth = limit.slope / 30
  const [from, to] = [
    Math.floor(Math.min(error.slope, -limit.slope) / thirtieth),
    Math.ceil(Math.max(error.slope, limit.slope) / thirtieth),
  ]
  const stride = Math.max(1, Math.ceil((to - from) / mostSlides))
  const part = Array.from({ length: Math.floor((to - from) / stride) + 1 }, (_, i) =>
    leaving((from + i * stride) * thirtieth),
  )
  return [none, ...part.filter((slide) => slide !== undefined), ...(whole ? [whole] : [])]
}

/** Ways of sliding that are tried at the most. */
const mostSlides = 240

/** Less than a nanometre is none. */
const clean = (value: number): number => (Math.abs(value) <= tiny ? 0 : value)

const after = (error: AxisError, stations: readonly Station[], heights: readonly number[]): AxisError =>
  stations.reduce(
    ({ offset, slope }, { per }, s) => ({
      offset: offset + per.offset * (heights[s] ?? 0),
      slope: slope + per.slope * (heights[s] ?? 0),
    }),
    error,
  )

/** Heights that every foot of the station has. */
function heightsOf(
  station: Station,
  feet: readonly AdjustableFoot[],
  around: number,
  reach: number,
): readonly number[] {
  const [first = [], ...others] = station.feet.map((i) => feet[i]?.heights(around, reach) ?? [])
  return first.filter((height) => others.every((ones) => ones.some((one) => Math.abs(one - height) < tiny)))
}

/** Heights of all stations for every pair of the end ones; those between follow the line. */
function* lines(
  stations: readonly Station[],
  feet: readonly AdjustableFoot[],
  reach: (x: number) => number,
  stray: number,
): Generator<readonly number[]> {
  const [aft, fore] = [stations[0], stations.at(-1)]
  if (!aft || !fore) return
  const of = (station: Station) => heightsOf(station, feet, station.wanted, reach(station.x))
  const fores = of(fore)
  for (const a of of(aft))
    for (const f of fores) {
      const heights = [a]
      for (const station of stations.slice(1, -1)) {
        const line = a + ((f - a) * (station.x - aft.x)) / (fore.x - aft.x)
        const [nearest] = heightsOf(station, feet, line, stray + tiny).toSorted(
          (one, other) => Math.abs(one - line) - Math.abs(other - line),
        )
        if (nearest === undefined) break
        heights.push(nearest)
      }
      if (heights.length === stations.length - 1) yield [...heights, f]
    }
}

/** Share of the limits beyond which a result cannot be better than one that uses up this share: outside the limits both of them count. */
const atMost = (used: number): number => (used > 1 ? Math.SQRT2 * used : used)

/** Below zero when the first is better. */
function compare(one: Candidate, other: Candidate, goal: number): number {
  const rank = ({ used }: Candidate) => (used <= goal + tiny ? 0 : used <= 1 + tiny ? 1 : 2)
  const ranks = rank(one) - rank(other)
  if (ranks !== 0) return ranks
  if (rank(one) === 2) return one.away - other.away || one.touched - other.touched
  if (rank(one) === 1) return one.used - other.used || one.touched - other.touched
  return (
    one.touched - other.touched ||
    (Math.abs(one.used - other.used) > tiny ? one.used - other.used : one.movement - other.movement)
  )
}

function chosen(
  { heights, slide, left, used, touched }: Candidate,
  stations: readonly Station[],
  count: number,
): ChosenMoves {
  const moves = Array.from({ length: count }, (_, foot) => ({
    vertical: heights[stations.findIndex((station) => station.feet.includes(foot))] ?? 0,
    horizontal: slide.moves[foot] ?? 0,
  }))
  return { moves, left, used, touched }
}
