import { between, type Heights } from '../adjuster-heights.ts'
import { inRange } from '../guard.ts'
import type { Result } from '../result.ts'
import type { FeetProblem, Foot } from './feet.ts'
import { type Gap, type Measure, measured, tiny, walkHeights } from './height-walk.ts'
import type { AxisError, InPlanes } from './planes.ts'
import { rigidMachine } from './rigid-move.ts'
import { type Slide, slidesOf } from './slides.ts'
import { type Station, stationsOf, type Tries } from './stations.ts'

/** A foot with what its adjuster can do. */
type AdjustableFoot = Foot & {
  /** Heights (m, + raise) it can be moved by; 0 among them where it can be left alone. */
  readonly heights: Heights
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
  /** Tries that are left, counted down: several searches may share them. */
  readonly tries?: Tries
}

/** Moves of the feet, in their order, m. `used`: share of the limits that is then used up, 1 on a limit. `sure`: none are better; false where
 * the search was broken off after its most tries. */
export type ChosenMoves = {
  readonly moves: readonly InPlanes<number>[]
  readonly left: InPlanes<AxisError>
  readonly used: number
  readonly touched: number
  readonly sure: boolean
}

/** No moves that could be made were found; `sure` when there are none. */
type NoHeights = { readonly type: 'no-heights'; readonly sure: boolean }

/** Share of the limits that errors in the two planes use up: the greater of the offsets' and the slopes'. 1 is on a limit. OutOfRange on
 * limits that are none.
 * @example shareUsed(inBothPlanes(() => ({ offset: 3e-5, slope: 0 })), { offset: 1e-4, slope: 1e-3 }) // ≈ 0.4243 */
export const shareUsed = ({ vertical, horizontal }: InPlanes<AxisError>, limit: AxisError): number =>
  measured('used', shares(vertical, limit), shares(horizontal, limit))

const shares = ({ offset, slope }: AxisError, limit: AxisError): AxisError => ({
  offset: offset / inRange('offset allowed (m)', limit.offset, 1e-9, 100),
  slope: slope / inRange('slope allowed (rad)', limit.slope, 1e-9, 10),
})

/** Heights of stations, fore or between, that are tried at the most: inside the limits, and half as many outside. Machines of four feet take some
 * ten. */
const maxTries = 20_000

/** Tries that it counts for to find where a branch has its best place. */
const toBegin = 20

/** Feet of more stations than this are not tried standing still in every choice of them. */
const maxStillStations = 6

/** The moves of the feet that serve best, out of all that the adjusters can do: those within `goal` of the limits come first,
 * then those inside the limits by how little they use up, then the others by how far off both limits together they are (root of the squares of
 * the shares, where the greater share alone would let the other grow to the same size); among those within the goal the fewest feet
 * touched, then the least used up (where one limit counts alone, the nearest to the other too), then the least movement. The feet that are loosened anyway go to where the result is best: a nut turned half
 * a flat more costs nothing, another round of readings does.
 *
 * Exact, and `sure` then, over all heights of the two end stations, as long as 20 000 tries suffice (or those that are left of `tries`): branch and bound (`walkHeights`).
 * Feet of one station move alike, so the roll stays as it is. The machine rests on its end stations; feet between follow to
 * the highest height they have on the line of the ends, or within `stray` under it. Sideways the machine slides: by the whole correction, as far as the feet can go, or not
 * at all. m, rad; + up, + to starboard. Feet at one station or in one oblique line come back as a problem, like no heights at
 * all that go together (`no-heights`); bad numbers throw OutOfRange. [derived]
 * @example searchMoves({ feet: [{ name: 'aft', x: 0.2, y: 0 }, { name: 'fwd', x: 0.6, y: 0 }].map((foot) => ({ ...foot,
 * heights: stepHeights(1e-4, { down: 0, up: 3e-4 }) })), error: { vertical: { offset: 0, slope: -5e-4 }, horizontal: { offset: 0, slope: 0 } },
 * limit: { offset: 1e-4, slope: 1e-3 }, goal: 0.1, stray: 1e-5 }).value.moves[1].vertical // ≈ 0.0003 */
export function searchMoves(problem: SearchProblem): Result<ChosenMoves, FeetProblem | NoHeights> {
  const set = setUp(problem)
  if (!set.ok) return set
  const inside = bestInside(set.value)
  if (inside.best) return { ok: true, value: chosen(inside.best, set.value, inside.sure) }
  // What was spent inside the limits is not missing outside them.
  const anew = setUp({ ...problem, tries: { left: maxTries / 2 } })
  if (!anew.ok) return anew
  const outside = leastOutside(anew.value)
  if (!outside.best) return { ok: false, problem: { type: 'no-heights', sure: outside.sure } }
  return { ok: true, value: chosen(outside.best, set.value, inside.sure && outside.sure) }
}

/** The moves that serve best of those that bring the machine inside its limits; undefined where none are found. Problems and OutOfRange as
 * `searchMoves`, a problem is none.
 * @example movesInside({ feet: [{ name: 'aft', x: 0.2, y: 0 }, { name: 'fwd', x: 0.6, y: 0 }].map((foot) => ({ ...foot, heights:
 * stepHeights(1e-3) })), error: { vertical: { offset: 4e-4, slope: 0 }, horizontal: { offset: 0, slope: 0 } }, limit: { offset: 1e-4, slope: 1e-3
 * }, goal: 0.1, stray: 0 }) // undefined */
export function movesInside(problem: SearchProblem): ChosenMoves | undefined {
  const set = setUp(problem)
  const inside = set.ok ? bestInside(set.value) : undefined
  return set.ok && inside?.best ? chosen(inside.best, set.value, inside.sure) : undefined
}

/** Whether any moves are found that bring the machine inside its limits: `movesInside`, without asking which are best.
 * @example comesInside({ feet: [{ name: 'aft', x: 0.2, y: 0 }, { name: 'fwd', x: 0.6, y: 0 }].map((foot) => ({ ...foot, heights:
 * stepHeights(1e-4) })), error: { vertical: { offset: 4e-4, slope: 0 }, horizontal: { offset: 0, slope: 0 } }, limit: { offset: 1e-4, slope: 1e-3
 * }, goal: 0.1, stray: 0 }) // true */
export function comesInside(problem: SearchProblem): boolean {
  const set = setUp(problem)
  return set.ok && someInside(set.value).best !== undefined
}

/** A problem with what is worked out of it once. */
type SetUp = SearchProblem & {
  readonly tries: Tries
  readonly stations: readonly Station[]
  readonly slides: readonly Slide[]
}

function setUp(problem: SearchProblem): Result<SetUp, FeetProblem> {
  inRange('goal', problem.goal, 1e-6, 1)
  inRange('stray (m)', problem.stray, 0, 1)
  shareUsed(problem.error, problem.limit)
  const machine = rigidMachine(problem.feet)
  if (!machine.ok) return machine
  const tries = problem.tries ?? { left: maxTries }
  const stations = stationsOf(problem.feet, tries)
  const slides = slidesOf(problem.feet, problem.error.horizontal, problem.limit.slope)
  return { ok: true, value: { ...problem, tries, stations, slides } }
}

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

/** What is looked through at once: one way of sliding, some stations left as they stand. */
type Branch = { readonly slide: Slide; readonly still: readonly boolean[]; readonly touched: number }

type SearchResult = { readonly best: Candidate | undefined; readonly sure: boolean }

/** The best of those inside the limits. */
function bestInside(set: SetUp): SearchResult {
  const { stations, slides, goal } = set
  const branches = slides
    .flatMap((slide) => stillChoices(stations).flatMap((still) => branchOf(set, slide, still)))
    .map((branch) => ({ ...branch, across: acrossOf(set, branch.slide, 'used') }))
    .sort((a, b) => a.touched - b.touched || a.across - b.across)
  const found = searchBranches(set, 'used', branches, (best, { touched }) => {
    if (!best) return 1 + tiny
    if (best.used > goal + tiny) return best.used + tiny
    // Fewer feet count for more than a better result; among the best others than the limits decide.
    if (touched < best.touched) return goal + tiny
    return touched === best.touched ? best.used + tiny : Number.NEGATIVE_INFINITY
  })
  const every = stations.length <= maxStillStations || (found.best?.used ?? 1) > goal + tiny
  return { ...found, sure: found.sure && every }
}

/** The first that is met inside the limits. */
const someInside = (set: SetUp): SearchResult =>
  searchBranches(set, 'used', slidesBy(set, 'used'), (best) => (best ? Number.NEGATIVE_INFINITY : 1 + tiny))

/** Of those outside the limits that which is least off both of them together. */
const leastOutside = (set: SetUp): SearchResult =>
  searchBranches(set, 'away', slidesBy(set, 'away'), (best) => best?.away ?? Number.MAX_VALUE)

/** A branch for every slide, whichever stations it leaves as they stand; those that leave least come first. */
const slidesBy = (set: SetUp, measure: Measure) =>
  set.slides
    .flatMap((slide) => branchOf(set, slide, []))
    .map((branch) => ({ ...branch, across: acrossOf(set, branch.slide, measure) }))
    .sort((a, b) => a.across - b.across)

/** What a slide leaves by itself. */
const acrossOf = ({ limit }: SetUp, { left }: Slide, measure: Measure): number =>
  measured(measure, { offset: 0, slope: 0 }, shares(left, limit))

/** Every choice of stations that are left as they stand; past six stations none of them, each end, or both. */
function stillChoices(stations: readonly Station[]): readonly (readonly boolean[])[] {
  const free = stations.length <= maxStillStations
  return stations.reduce<readonly (readonly boolean[])[]>(
    (all, _, s) =>
      free || s === 0 || s === stations.length - 1
        ? all.flatMap((one) => [
            [...one, false],
            [...one, true],
          ])
        : all.map((one) => [...one, false]),
    [[]],
  )
}

/** The branch with these stations left as they stand; none where a slide moves all their feet anyway. */
function branchOf({ stations }: SetUp, slide: Slide, still: readonly boolean[]): readonly Branch[] {
  const slid = (foot: number) => Math.abs(slide.moves[foot] ?? 0) > tiny
  if (stations.some(({ feet }, s) => still[s] && feet.every(slid))) return []
  const touched = stations.flatMap(({ feet }, s) => feet.filter((foot) => slid(foot) || !still[s])).length
  return [{ slide, still, touched }]
}

/** Looks through branches for the best, by what is used up for one inside the limits; `most` is the measure that a better one can have at the
 * most. */
function searchBranches<B extends Branch & { readonly across: number }>(
  set: SetUp,
  measure: Measure,
  branches: readonly B[],
  most: (best: Candidate | undefined, branch: B) => number,
): SearchResult {
  const { stations, error, limit, stray, goal, tries } = set
  const [aft, fore] = [stations[0], stations.at(-1)]
  if (!aft || !fore) return { best: undefined, sure: true }
  const between = stations.slice(1, -1)
  const still = shares(error.vertical, limit)
  const leaves = {
    still,
    aft: shares(aft.per, limit),
    fore: shares(fore.per, limit),
  }
  let best: Candidate | undefined
  for (const branch of branches) {
    const currentBound = () => {
      tries.left -= 1
      return tries.left > 0 ? most(best, branch) : Number.NEGATIVE_INFINITY
    }
    if (tries.left <= 0 || branch.across > most(best, branch)) continue
    tries.left -= toBegin
    const bounds = between.map(({ share, heights }, i) => {
      const [low, high] = branch.still[i + 1]
        ? [0, 0]
        : [heights.from(-far) ?? far, heights.upTo(far) ?? -far]
      return { share, low: low - tiny, high: high + stray + tiny }
    })
    walkHeights(
      {
        leaves,
        across: shares(branch.slide.left, limit),
        measure,
        aft: branch.still[0] ? unmovedHeights(aft.heights) : aft.heights,
        fore: branch.still[stations.length - 1] ? unmovedHeights(fore.heights) : fore.heights,
        between: bounds,
      },
      currentBound,
      (a, f) => {
        tries.left -= stations.length - 2
        const heights = stationHeights(between, a, f, stray)
        if ('above' in heights) return heights
        const candidate = candidateFor(set, heights, branch.slide)
        const counts = measure === 'away' || candidate.used <= 1 + tiny
        if (counts && (!best || compare(candidate, best, goal) < 0)) best = candidate
        return undefined
      },
    )
  }
  return { best, sure: tries.left > 0 }
}

/** Farther (m) than any foot goes. */
const far = 100

/** Left where it stands. */
const unmovedHeights = (heights: Heights): Heights => between(heights, 0, 0)

/** Heights of all stations, those between at the highest they have on the line of the ends or under it, so that the machine rests on its ends;
 * where one has none near enough, the heights of the fore end with which it might. */
function stationHeights(
  between: readonly Station[],
  aft: number,
  fore: number,
  stray: number,
): readonly number[] | Gap {
  const heights = [aft]
  for (const { share, heights: own } of between) {
    const line = aft + (fore - aft) * share
    const [down, up] = [
      own.upTo(line) ?? Number.NEGATIVE_INFINITY,
      own.from(line) ?? Number.POSITIVE_INFINITY,
    ]
    if (line - down > stray + tiny) {
      const foreFor = (height: number) => (height - aft * (1 - share)) / share
      return { above: foreFor(up), below: foreFor(down + stray) }
    }
    heights.push(down)
  }
  return [...heights, fore]
}

function candidateFor(
  { stations, error, limit }: SetUp,
  heights: readonly number[],
  slide: Slide,
): Candidate {
  const vertical = after(error.vertical, stations, heights)
  const [off, across] = [shares(vertical, limit), shares(slide.left, limit)]
  let touched = 0
  let movement = 0
  stations.forEach((station, s) => {
    const height = Math.abs(heights[s] ?? 0)
    for (const foot of station.feet) {
      const sideways = Math.abs(slide.moves[foot] ?? 0)
      if (height > tiny || sideways > tiny) touched += 1
      movement += height + sideways
    }
  })
  const left = { vertical, horizontal: slide.left }
  return {
    heights,
    slide,
    left,
    used: measured('used', off, across),
    away: measured('away', off, across),
    touched,
    movement,
  }
}

const after = (error: AxisError, stations: readonly Station[], heights: readonly number[]): AxisError =>
  stations.reduce(
    ({ offset, slope }, { per }, s) => ({
      offset: offset + per.offset * (heights[s] ?? 0),
      slope: slope + per.slope * (heights[s] ?? 0),
    }),
    error,
  )

/** Below zero when the first is better. */
function compare(one: Candidate, other: Candidate, goal: number): number {
  const rank = ({ used }: Candidate) => (used <= goal + tiny ? 0 : used <= 1 + tiny ? 1 : 2)
  const ranks = rank(one) - rank(other)
  if (ranks !== 0) return ranks
  const fewer = one.touched - other.touched
  const nearer = one.away - other.away
  if (rank(one) === 2) return nearer || fewer
  const lessUsed = Math.abs(one.used - other.used) > tiny ? one.used - other.used : 0
  if (rank(one) === 1) return lessUsed || fewer || nearer
  return fewer || lessUsed || (Math.abs(nearer) > tiny ? nearer : one.movement - other.movement)
}

function chosen(
  { heights, slide, left, used, touched }: Candidate,
  { stations, feet }: SetUp,
  sure: boolean,
): ChosenMoves {
  const moves = feet.map((_, foot) => ({
    vertical: heights[stations.findIndex((station) => station.feet.includes(foot))] ?? 0,
    horizontal: slide.moves[foot] ?? 0,
  }))
  return { moves, left, used, touched, sure }
}
