import type { Face } from '../engineering/alignment/face.ts'
import { type FootCorrection, footCorrections } from '../engineering/alignment/feet.ts'
import { gapVariation } from '../engineering/alignment/gap-variation.ts'
import { type Covariance, type InPlanes, inBothPlanes } from '../engineering/alignment/planes.ts'
import type { Pose } from '../engineering/alignment/pose.ts'
import { movedFace, movedRim, rigidMachine } from '../engineering/alignment/rigid-move.ts'
import type { Rim } from '../engineering/alignment/rim.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf } from '../job/model.ts'
import { exactly, type Uncertain } from '../quantity/uncertainty.ts'
import { type AlignmentFault, asFault, blaming, WrongFact } from './alignment-fault.ts'
import { feetOf } from './alignment-feet.ts'
import { said } from './said.ts'
import { type Adjuster, type CorrectedFoot, left, stepsFor, unseen } from './steps.ts'

/** How the machine was found to stand, and what it is held against, m. */
export interface Found {
  readonly face: Face
  readonly rim: Rim | undefined
  readonly pose: Pose
  readonly limits: { readonly gapVariation: number; readonly offset: number | undefined }
}

/** What the next reading should show after the steps; `inside` when that is within both limits. The uncertainty is that of what it will show:
 * of this reading and of the next, taken in the same way. */
export interface Predicted {
  readonly gapVariation: Uncertain
  readonly offset?: InPlanes<Uncertain>
  readonly inside: boolean
}

/** What each foot of the bed has to do. */
export interface Asked {
  /** What sets the heights of the feet, where the bed says. */
  readonly adjuster?: 'stud-and-nuts' | 'shims'
  readonly feet: readonly FootCorrection[]
  /** The steps that bring the feet there, and what they lead to. */
  readonly steps: () => { readonly feet: readonly CorrectedFoot[]; readonly predicted: Predicted }
  /** What the next reading should show when nothing is moved. */
  readonly unmoved: Predicted
}

/** The corrections of the feet; a fault where the bed does not give them. Throws Unreadable and RangeError. */
export function askedOf(
  bed: Block | undefined,
  found: Found,
  lookup: Lookup,
  assumptions: string[],
): Asked | AlignmentFault {
  const moves = feetOf(bed, assumptions)
  if (!moves.ok) return moves.fault
  const corrected = footCorrections(found.pose, moves.feet)
  if (!corrected.ok) return asFault(corrected.problem)
  const { feet } = corrected.value
  if (bed) refuseFarMoves(bed, feet, lookup)
  const machine = rigidMachine(moves.feet)
  if (!machine.ok) return asFault(machine.problem)
  const after = (chosen: readonly CorrectedFoot[]): Outcome =>
    outcomeOf(found, machine.value(chosen.map(asMoved)))
  const adjuster = bed && said(bed, 'bed.adjuster')
  return {
    ...(adjuster && { adjuster }),
    feet,
    steps: () => {
      const chosen = blaming(factOfSteps(bed, moves.adjuster), tooOdd, () =>
        stepsFor(feet, moves.adjuster, (some) => after(some).used),
      )
      return { feet: chosen, predicted: foreseen(after(chosen)) }
    },
    unmoved: foreseen(after(feet.map(left))),
  }
}

const tooOdd =
  'The steps cannot be worked out: the pitch of the thread, or a shim, has a size that is not made.'

const factOfSteps = (bed: Block | undefined, { by }: Adjuster) =>
  bed?.facts.get(by === 'shims' ? 'shims' : 'thread')

/** A foot that would have to go further than this (m) is miswritten, or the gaps are. */
const farthestMove = 1

function refuseFarMoves(bed: Block, feet: readonly FootCorrection[], lookup: Lookup): void {
  for (const { name, vertical, horizontal } of feet) {
    const far = Math.max(Math.abs(vertical.value), Math.abs(horizontal.value))
    if (far > farthestMove)
      throw new WrongFact(
        `Foot ${name} would have to move ${lookup.show(far, 'length')}: its from-coupling, or one of the gaps, is wrong.`,
        childrenOf(bed, 'foot')
          .find((foot) => foot.name === name)
          ?.facts.get('from-coupling'),
      )
  }
}

/** Whether U is larger than the move at every foot, up and sideways. */
export const allUnseen = (feet: readonly FootCorrection[]): boolean =>
  feet.length > 0 && feet.every(({ vertical, horizontal }) => unseen(vertical) && unseen(horizontal))

interface Outcome extends Omit<Predicted, 'inside'> {
  /** Share of the limits that is used up: 1 is on a limit. */
  readonly used: number
}

function outcomeOf({ face, rim, limits }: Found, moved: Parameters<typeof movedFace>[1]): Outcome {
  const gap = gapVariation(readAgain(movedFace(face, moved)))
  const offset = rim && inBothPlanes((plane) => twice(movedRim(rim, moved).offset[plane]))
  const away = offset && Math.hypot(offset.vertical.value, offset.horizontal.value)
  const used = Math.max(
    gap.value / limits.gapVariation,
    away !== undefined && limits.offset !== undefined ? away / limits.offset : 0,
  )
  return { gapVariation: gap, ...(offset && { offset }), used }
}

/** A second reading errs as much as the first and independently of it, so the variances add (JCGM 100, 5.1.2). */
const twice = (u: Uncertain): Uncertain => ({ ...u, standard: Math.SQRT2 * u.standard })
const doubled = (C: Covariance): Covariance => C.map((row) => row.map((v) => 2 * v))

const readAgain = (face: Face): Face => ({
  ...face,
  slope: inBothPlanes((plane) => twice(face.slope[plane])),
  covariance: doubled(face.covariance),
})

const foreseen = ({ used, ...shown }: Outcome): Predicted => ({ ...shown, inside: used <= 1 + 1e-9 })

/** The step as the foot's own move: sideways the whole correction, since it is not tied to flats. */
const asMoved = (foot: CorrectedFoot): InPlanes<Uncertain> => ({
  vertical: exactly(foot.moved),
  horizontal: exactly(foot.step.by === 'none' ? 0 : foot.horizontal.value),
})
