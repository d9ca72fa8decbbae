import type { Face } from '../../../engineering/alignment/face.ts'
import { byStation, type FootCorrection, footCorrections } from '../../../engineering/alignment/feet.ts'
import { gapVariation } from '../../../engineering/alignment/gap-variation.ts'
import { shareUsed } from '../../../engineering/alignment/move-search.ts'
import { type Covariance, type InPlanes, inBothPlanes } from '../../../engineering/alignment/planes.ts'
import { movedFace, movedRim, type RigidMove } from '../../../engineering/alignment/rigid-move.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import { exactly, type Uncertain } from '../../../quantity/uncertainty.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { failed, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import type { AlignmentState } from './alignment-state.ts'
import { chooseMoves, errorOf, limitOf, provableFor, type WayInside } from './choose-moves.ts'
import { type AlignmentOutcome, asFault, blaming, factAt, WrongFact } from './fault.ts'
import { feetOf, machineOn } from './feet.ts'
import { type Adjuster, belowUncertainty, type CorrectedFoot, stepFor, unmovedFoot } from './steps.ts'

/** What the next reading should show after the steps; `inside` when that is within both limits, or within that of the gap variation where
 * the offset is not known. The uncertainty is that of what it will show:
 * of this reading and of the next, taken in the same way. */
export interface Predicted {
  readonly gapVariation: Uncertain
  /** Gap at top less gap at bottom, at starboard less at port, where the gauge goes in, m. */
  readonly opening: InPlanes<Uncertain>
  readonly offset?: InPlanes<Uncertain>
  /** What is left to the target, m. */
  readonly fromTarget: { readonly gapVariation: number; readonly offset?: number }
  readonly inside: boolean
  /** Far enough inside for that reading to prove it. */
  readonly provable: boolean
}

export interface CorrectionSteps {
  readonly feet: readonly CorrectedFoot[]
  readonly predicted: Predicted
  /** What would bring the machine inside, where these steps do not. */
  readonly ways: readonly (readonly WayInside[])[]
  /** There were more ways to set the feet than were tried. */
  readonly untried: boolean
}

/** What each foot of the bed has to do. */
export interface FootCorrectionPlan {
  /** What sets the heights of the feet, where the bed says. */
  readonly adjuster?: 'stud-and-nuts' | 'shims'
  readonly feet: readonly FootCorrection[]
  /** What the next reading should show when nothing is moved. */
  readonly unmoved: Predicted
}

/** The corrections of the feet, where the bed gives them. Throws Unreadable and OutOfRange. */
export function footCorrectionPlan(
  bed: Block | undefined,
  found: AlignmentState,
  lookup: Lookup,
  assumptions: string[],
): AlignmentOutcome<FootCorrectionPlan> {
  const outcome = feetOf(bed)
  if (!outcome.ok) return outcome
  const moves = outcome.value
  assumptions.push(...moves.assumptions)
  const { adjuster } = moves
  const corrected = footCorrections(found.pose, moves.feet, found.target)
  if (!corrected.ok) return failed(asFault(corrected.problem))
  const { feet } = corrected.value
  if (bed) refuseFarMoves(bed, feet, lookup)
  const loses = (i: number): boolean =>
    adjuster.by === 'shims' && (feet[i]?.vertical.value ?? 0) < Math.min(...adjuster.stock)
  if (moves.feet.some(({ pack }, i) => pack === undefined && loses(i)))
    assumptions.push('the shims to take out are there: not every foot states its pack, so measure first')
  const machine = machineOn(moves)
  if (!machine.ok) return failed(asFault(machine.problem))
  const statedAdjuster = bed && statedFact(bed, 'bed.adjuster')
  return ok({
    ...(statedAdjuster && { adjuster: statedAdjuster }),
    feet,
    unmoved: predictedFrom(found, machine.value(carriedByEnds(feet.map(unmovedFoot)))),
  })
}

/** The steps that bring the feet of a bed there, and what they lead to. Throws Unreadable and OutOfRange. */
export function stepsOf(
  bed: Block | undefined,
  { feet }: FootCorrectionPlan,
  found: AlignmentState,
): AlignmentOutcome<CorrectionSteps> {
  const outcome = feetOf(bed)
  if (!outcome.ok) return outcome
  const { adjuster, feet: stands } = outcome.value
  const machine = machineOn(outcome.value)
  if (!machine.ok) return failed(asFault(machine.problem))
  const after = (chosen: readonly CorrectedFoot[]): Predicted =>
    predictedFrom(found, machine.value(carriedByEnds(chosen)))
  if (adjuster.by === 'hand') {
    const exact = feet.map((foot) => stepFor(foot, wholeMove(foot), adjuster))
    return ok({ feet: exact, predicted: after(exact), ways: [], untried: false })
  }
  return blaming(factOfSteps(bed, adjuster), impossibleSize, () => {
    const choice = chooseMoves({ feet: stands, adjuster, found })
    if (!choice.ok) return choice
    const { moves, ways, sure } = choice.value
    const chosen = feet.map((foot, i) => stepFor(foot, moves[i] ?? noMove, adjuster, stands[i]))
    return ok({ feet: chosen, predicted: after(chosen), ways, untried: !sure })
  })
}

const noMove: InPlanes<number> = { vertical: 0, horizontal: 0 }

const wholeMove = (foot: FootCorrection): InPlanes<number> => inBothPlanes((plane) => foot[plane].value)

const impossibleSize =
  'The steps cannot be calculated: the pitch of the thread, or a shim, has a size that does not exist.'

const factOfSteps = (bed: Block | undefined, { by }: Adjuster) =>
  factAt(bed, by === 'shims' ? 'shims' : 'thread')

/** A foot that would have to go further than this (m) is miswritten, or the gaps are. */
const farthestMove = 1

function refuseFarMoves(bed: Block, feet: readonly FootCorrection[], lookup: Lookup): void {
  for (const { name, vertical, horizontal } of feet) {
    const far = Math.max(Math.abs(vertical.value), Math.abs(horizontal.value))
    if (far > farthestMove)
      throw new WrongFact(
        `Foot ${name} would have to move ${lookup.show(far, 'length')}: its from-coupling, or one of the gaps, is wrong.`,
        factAt(
          childrenOf(bed, 'foot').find((foot) => foot.name === name),
          'from-coupling',
        ),
      )
  }
}

/** Whether U is larger than the move at every foot, up and sideways. */
export const allBelowUncertainty = (feet: readonly FootCorrection[]): boolean =>
  feet.length > 0 &&
  feet.every(({ vertical, horizontal }) => belowUncertainty(vertical) && belowUncertainty(horizontal))

function predictedFrom(found: AlignmentState, moved: RigidMove): Predicted {
  const { rim } = found
  const face = readAgain(movedFace(found.face, moved))
  const diameter = 2 * face.radius
  const offset = rim && inBothPlanes((plane) => twice(movedRim(rim, moved).offset[plane]))
  const wanted = errorOf(found)
  const residual = inBothPlanes((plane) => ({
    offset: wanted[plane].offset + moved[plane].offset.value,
    slope: wanted[plane].slope + moved[plane].slope.value,
  }))
  const length = (what: 'offset' | 'slope') => Math.hypot(residual.vertical[what], residual.horizontal[what])
  const used = shareUsed(residual, limitOf(found))
  return {
    gapVariation: gapVariation(face),
    opening: inBothPlanes((plane) => ({
      value: 0 - diameter * face.slope[plane].value,
      standard: diameter * face.slope[plane].standard,
    })),
    ...(offset && { offset }),
    fromTarget: { gapVariation: diameter * length('slope'), ...(offset && { offset: length('offset') }) },
    inside: used <= 1 + 1e-9,
    provable: used <= provableFor(found) + 1e-9,
  }
}

/** A second reading errs as much as the first and independently of it, so the variances add (JCGM 100, 5.1.2). */
const twice = (u: Uncertain): Uncertain => ({ ...u, standard: Math.SQRT2 * u.standard })
const doubled = (C: Covariance): Covariance => C.map((row) => row.map((v) => 2 * v))

const readAgain = (face: Face): Face => ({
  ...face,
  slope: inBothPlanes((plane) => twice(face.slope[plane])),
  covariance: doubled(face.covariance),
})

/** What the moves do to a machine that rests on its end stations: feet between, which touch or hang a little, are carried along. */
function carriedByEnds(chosen: readonly CorrectedFoot[]): readonly InPlanes<Uncertain>[] {
  const stations = byStation(chosen)
  const [aft, fore] = [stations[0], stations.at(-1)].map((station) => {
    const heights = station?.feet.map((i) => chosen[i]?.moved ?? 0) ?? []
    return { x: station?.x ?? 0, height: heights.reduce((sum, height) => sum + height, 0) / heights.length }
  })
  const between = new Set(stations.slice(1, -1).flatMap(({ feet }) => feet))
  return chosen.map(({ x, moved, slid }, i) => {
    const share = aft && fore ? (x - aft.x) / (fore.x - aft.x) : 0
    const line = aft && fore ? aft.height + share * (fore.height - aft.height) : moved
    return { vertical: exactly(between.has(i) ? line : moved), horizontal: exactly(slid) }
  })
}
