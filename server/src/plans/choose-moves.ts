import { goalOf } from '../engineering/alignment/goal.ts'
import { type AxisError, type ChosenMoves, searchMoves } from '../engineering/alignment/move-search.ts'
import { type InPlanes, inBothPlanes } from '../engineering/alignment/planes.ts'
import { type AlignmentFault, asFault, fault } from './alignment-fault.ts'
import type { Found } from './alignment-found.ts'
import { type Adjuster, type BedFoot, heightsOf, stepOf } from './steps.ts'

type Steps = Exclude<Adjuster, { by: 'hand' }>

/** Something that would bring the machine inside its limits. */
export type Way =
  | { readonly type: 'finer-step'; readonly partsOfFlat: number }
  | { readonly type: 'thinner-shim'; readonly thickness: number }
  /** Travel (m) that a foot would have to have. */
  | { readonly type: 'travel'; readonly foot: string; readonly up: number }
  | { readonly type: 'hole-clearance'; readonly foot: string; readonly sideways: number }

interface Choice {
  readonly moves: readonly InPlanes<number>[]
  readonly ways: readonly Way[]
}

/** Axis less target. */
export const errorOf = ({ pose, target }: Found): InPlanes<AxisError> =>
  inBothPlanes((plane) => ({
    offset: pose[plane].offset.value - (pose.offsetBasis === 'unknown' ? 0 : target[plane].offset),
    slope: pose[plane].slope.value - target[plane].slope,
  }))

/** An offset that has no limit of its own is held like the gap variation: so that a machine whose offset is not known, or held by a pilot, is not
 * pushed off its centre by the steps. */
export const limitOf = ({ face, limits }: Found): AxisError => ({
  offset: limits.offset ?? limits.gapVariation,
  slope: limits.gapVariation / (2 * face.radius),
})

export const goalFor = ({ gapVariation, offset, limits }: Found): number =>
  Math.min(
    goalOf(gapVariation, gapVariation, limits.gapVariation),
    offset && limits.offset !== undefined ? goalOf(offset, offset, limits.offset) : 1,
  )

/** Farthest (m) that a foot between others may stand off their line when it has shims: as a soft foot. Common practice, no source. */
const strayOfShims = 5e-5

/** The moves that serve best of all that the adjusters can make, and where these do not bring the machine inside, what would. */
export function chooseMoves(
  feet: readonly BedFoot[],
  adjuster: Steps,
  found: Found,
): Choice | AlignmentFault {
  const outcome = search(feet, adjuster, found)
  if (outcome.ok && outcome.value.used <= 1 + 1e-9) return { moves: outcome.value.moves, ways: [] }
  const ways = waysInside(feet, adjuster, found)
  if (outcome.ok) return { moves: outcome.value.moves, ways }
  return outcome.problem.type === 'no-heights'
    ? fault(
        'no-steps',
        'The feet have no heights in reach that go together: look at travel-up, travel-down and the packs of each foot.',
      )
    : asFault(outcome.problem)
}

const search = (feet: readonly BedFoot[], adjuster: Steps, found: Found) =>
  searchMoves({
    feet: feet.map((foot) => ({ ...foot, heights: heightsOf(foot, adjuster) })),
    error: errorOf(found),
    limit: limitOf(found),
    goal: goalFor(found),
    stray: adjuster.by === 'nut' ? stepOf(adjuster) / 2 : strayOfShims,
  })

/** Each that would do by itself; of finer steps the coarsest, of the others what the feet would then have to do. */
function waysInside(feet: readonly BedFoot[], adjuster: Steps, found: Found): readonly Way[] {
  const inside = (some: readonly BedFoot[], by: Steps): ChosenMoves | undefined => {
    const outcome = search(some, by, found)
    return outcome.ok && outcome.value.used <= 1 + 1e-9 ? outcome.value : undefined
  }
  const finer = finerThan(adjuster).find(([, by]) => inside(feet, by))
  const free = inside(
    feet.map(({ up: _up, down: _down, ...foot }) => foot),
    adjuster,
  )
  const wide = inside(
    feet.map(({ sideways: _sideways, ...foot }) => foot),
    adjuster,
  )
  const beyond = (i: number, { vertical }: InPlanes<number>): boolean =>
    vertical > (feet[i]?.up ?? Number.POSITIVE_INFINITY) + 1e-9 ||
    -vertical > (feet[i]?.down ?? Number.POSITIVE_INFINITY) + 1e-9
  return [
    ...(finer ? [finer[0]] : []),
    ...(free?.moves ?? []).flatMap((move, i): Way[] =>
      beyond(i, move) ? [{ type: 'travel', foot: feet[i]?.name ?? '', up: move.vertical }] : [],
    ),
    ...(wide?.moves ?? []).flatMap((move, i): Way[] =>
      Math.abs(move.horizontal) > (feet[i]?.sideways ?? Number.POSITIVE_INFINITY) + 1e-9
        ? [{ type: 'hole-clearance', foot: feet[i]?.name ?? '', sideways: move.horizontal }]
        : [],
    ),
  ]
}

function finerThan(adjuster: Steps): readonly (readonly [Way, Steps])[] {
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
