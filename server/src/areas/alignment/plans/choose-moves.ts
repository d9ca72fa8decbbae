import type { Heights } from '../../../engineering/adjuster-heights.ts'
import { goalOf, provableShare } from '../../../engineering/alignment/goal.ts'
import {
  comesInside,
  movesInside,
  type SearchProblem,
  searchMoves,
} from '../../../engineering/alignment/move-search.ts'
import { type AxisError, type InPlanes, inBothPlanes } from '../../../engineering/alignment/planes.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import { solve } from '../../../store/solve.ts'
import { failed, ok } from '../../common/outcome.ts'
import type { AlignmentState } from './alignment-state.ts'
import { type AlignmentOutcome, asFault, fault } from './fault.ts'
import { type Adjuster, type BedFoot, heightsOf, touching } from './steps.ts'

type SteppedAdjuster = Exclude<Adjuster, { by: 'hand' }>

/** Something that would bring the machine inside its limits. */
export type WayInside =
  | { readonly type: 'finer-step'; readonly partsOfFlat: number }
  | { readonly type: 'thinner-shim'; readonly thickness: number }
  /** Travel (m) that a foot would have to have, - down. */
  | { readonly type: 'travel'; readonly foot: string; readonly up: number }
  /** Clearance (m) to either side that its hole would have to have. */
  | { readonly type: 'hole-clearance'; readonly foot: string; readonly sideways: number }
  /** How far (m) the machine flange would go from where it stands, where that place was not read. */
  | { readonly type: 'off-centre'; readonly by: number }

interface Choice {
  readonly moves: readonly InPlanes<number>[]
  /** No moves are better; false where there were too many to try all. */
  readonly sure: boolean
  /** Each by itself would do; what stands in one of them is needed together. */
  readonly ways: readonly (readonly WayInside[])[]
}

/** Axis less target. */
export const errorOf = ({ pose, target }: AlignmentState): InPlanes<AxisError> =>
  inBothPlanes((plane) => ({
    offset: pose[plane].offset.value - (pose.offsetBasis === 'read' ? target[plane].offset : 0),
    slope: pose[plane].slope.value - target[plane].slope,
  }))

/** An offset that has no limit of its own is held like the gap variation: so that a machine whose offset is not known, or held by a pilot, is not
 * pushed off its centre by the steps. */
export const limitOf = ({ face, limits }: AlignmentState): AxisError => ({
  offset: limits.offset ?? limits.gapVariation,
  slope: limits.gapVariation / (2 * face.radius),
})

/** Least of what the limits leave room for, gaps and offset. */
const leastShare = (
  { gapVariation, offset, limits }: AlignmentState,
  share: (now: Uncertain, next: Uncertain, limit: number) => number,
): number =>
  Math.min(
    share(gapVariation, gapVariation, limits.gapVariation),
    offset && limits.offset !== undefined ? share(offset, offset, limits.offset) : 1,
  )

const goalFor = (found: AlignmentState): number => leastShare(found, goalOf)

/** Share of the limits that a result may use up for the next reading to prove it. */
export const provableFor = (found: AlignmentState): number => leastShare(found, provableShare)

/** Farthest (m) that a foot between others may stand off their line when it has shims: as a soft foot. Common practice, no source. */
const strayOfShims = 5e-5

interface Choosing {
  readonly feet: readonly BedFoot[]
  readonly adjuster: SteppedAdjuster
  readonly found: AlignmentState
}

/** The moves that serve best of all that the adjusters can make, and where these do not bring the machine inside, what would. */
export const chooseMoves = solve(({ feet, adjuster, found }: Choosing): AlignmentOutcome<Choice> => {
  const outcome = searchMoves(problemOf(feet, adjuster, found))
  if (!outcome.ok)
    return failed(
      outcome.problem.type === 'no-heights'
        ? fault(
            'no-steps',
            'The feet have no heights in reach that go together: look at travel-up, travel-down and the packs of each foot.',
          )
        : asFault(outcome.problem),
    )
  const { moves, used, sure } = outcome.value
  return ok({ moves, sure, ways: isInside(used) ? [] : waysInside(feet, adjuster, found) })
})

const isInside = (used: number): boolean => used <= 1 + 1e-9

const problemOf = (
  feet: readonly BedFoot[],
  adjuster: SteppedAdjuster,
  found: AlignmentState,
): SearchProblem => ({
  feet: withHeights(feet, adjuster),
  error: errorOf(found),
  limit: limitOf(found),
  goal: goalFor(found),
  stray: adjuster.by === 'nut' ? touching : strayOfShims,
})

/** Feet with the heights they can be set to; the same ones for feet that stand alike. */
function withHeights(feet: readonly BedFoot[], adjuster: SteppedAdjuster): SearchProblem['feet'] {
  const known = new Map<string, Heights>()
  return feet.map((foot) => {
    const alike = [foot.up, foot.down, foot.pack, foot.between].join()
    const heights = known.get(alike) ?? heightsOf(foot, adjuster)
    known.set(alike, heights)
    return { ...foot, heights }
  })
}

/** What is looked for besides the moves themselves may take so many tries in all. */
const triesForWays = 20_000

/** Of finer steps the coarsest; of travel and holes as little as will do. */
function waysInside(
  feet: readonly BedFoot[],
  adjuster: SteppedAdjuster,
  found: AlignmentState,
): readonly (readonly WayInside[])[] {
  const tries = { left: triesForWays }
  const problem = (some: readonly BedFoot[], by: SteppedAdjuster) => ({
    ...problemOf(some, by, found),
    tries,
  })
  const finer = finerThan(adjuster).find(([, by]) => comesInside(problem(feet, by)))
  const room = (which: Room) => roomFor(feet, which, (some) => problem(some, adjuster))
  const [travel, holes] = [room({ travel: true }), room({ holes: true })]
  const both = travel || holes ? undefined : room({ travel: true, holes: true })
  const offCentre = slopeAlone(found, (limit) => comesInside({ ...problem(feet, adjuster), limit }))
  return [finer ? [finer[0]] : [], travel ?? [], holes ?? [], both ?? [], offCentre].filter(
    (way) => way.length > 0,
  )
}

/** How far off its place the machine flange would have to go for the slope to come inside, where its place was not read: to a power of two, as far
 * as 50 mm. */
function slopeAlone(found: AlignmentState, inside: (limit: AxisError) => boolean): readonly WayInside[] {
  if (found.pose.offsetBasis !== 'unknown') return []
  const limit = limitOf(found)
  for (let offset = 2 * limit.offset; offset <= 0.05; offset *= 2)
    if (inside({ ...limit, offset })) return [{ type: 'off-centre', by: offset }]
  return []
}

interface Room {
  readonly travel?: boolean
  readonly holes?: boolean
}

/** The room that the feet would have to have besides what they have; undefined where that would not do either. */
function roomFor(
  feet: readonly BedFoot[],
  { travel, holes }: Room,
  problem: (feet: readonly BedFoot[]) => SearchProblem,
): readonly WayInside[] | undefined {
  const free = movesInside(
    problem(
      feet.map(({ up, down, sideways, ...foot }) => ({
        ...foot,
        ...(!travel && up !== undefined && { up }),
        ...(!travel && down !== undefined && { down }),
        ...(!holes && sideways !== undefined && { sideways }),
      })),
    ),
  )
  if (!free) return undefined
  const { moves } = free
  const wider = (now: number | undefined, needed: number, share: number) =>
    now === undefined ? undefined : now + share * Math.max(0, roundedUp(needed) - now)
  /** The feet with this share of the room that the free moves take. */
  const given = (share: number): readonly BedFoot[] =>
    feet.map((foot, i) => {
      const { vertical = 0, horizontal = 0 } = moves[i] ?? {}
      const up = travel ? wider(foot.up, vertical, share) : foot.up
      const down = travel ? wider(foot.down, -vertical, share) : foot.down
      const sideways = holes ? wider(foot.sideways, Math.abs(horizontal), share) : foot.sideways
      return {
        ...foot,
        ...(up !== undefined && { up }),
        ...(down !== undefined && { down }),
        ...(sideways !== undefined && { sideways }),
      }
    })
  let [short, enough] = [0, 1]
  for (let i = 0; i < 7; i++) {
    const middle = (short + enough) / 2
    if (comesInside(problem(given(middle)))) enough = middle
    else short = middle
  }
  return given(enough).flatMap((foot, i): WayInside[] => {
    const now = feet[i]
    const more = (a: number | undefined, b: number | undefined) => (a ?? 0) > (b ?? 0) + 1e-9
    return [
      ...(more(foot.up, now?.up)
        ? [{ type: 'travel', foot: foot.name, up: roundedUp(foot.up ?? 0) } as const]
        : []),
      ...(more(foot.down, now?.down)
        ? [{ type: 'travel', foot: foot.name, up: -roundedUp(foot.down ?? 0) } as const]
        : []),
      ...(more(foot.sideways, now?.sideways)
        ? [{ type: 'hole-clearance', foot: foot.name, sideways: roundedUp(foot.sideways ?? 0) } as const]
        : []),
    ]
  })
}

/** To the hundredth of a millimetre, up: what is asked for has to be enough when it is there. */
const roundedUp = (length: number): number => Math.ceil(length * 1e5 - 1e-4) / 1e5

function finerThan(adjuster: SteppedAdjuster): readonly (readonly [WayInside, SteppedAdjuster])[] {
  if (adjuster.by === 'nut')
    return [2, 4, 8]
      .filter((partsOfFlat) => partsOfFlat > adjuster.partsOfFlat)
      .map((partsOfFlat) => [
        { type: 'finer-step', partsOfFlat },
        { ...adjuster, partsOfFlat },
      ])
  const thinnest = Math.min(...adjuster.stock)
  return [1e-4, 5e-5, 2.5e-5]
    .filter((thickness) => thickness < thinnest - 1e-9)
    .map((thickness) => [
      { type: 'thinner-shim', thickness },
      { ...adjuster, stock: [...adjuster.stock, thickness] },
    ])
}
