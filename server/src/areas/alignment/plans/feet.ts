import { memoizeByIdentity } from '../../../common/memoize-by-identity.ts'
import { byStation } from '../../../engineering/alignment/feet.ts'
import { rigidMachine } from '../../../engineering/alignment/rigid-move.ts'
import { parseThread } from '../../../engineering/thread.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import { blockPlan } from '../../../store/plan.ts'
import { failed, ok } from '../../common/outcome.ts'
import { statedFact, Unreadable } from '../../common/stated-fact.ts'
import { type AlignmentFault, type AlignmentOutcome, asFault, fault } from './fault.ts'
import type { Adjuster, BedFoot } from './steps.ts'

export interface Feet {
  readonly feet: readonly BedFoot[]
  readonly adjuster: Adjuster
  readonly assumptions: readonly string[]
}

const noBed = failed(
  fault('no-feet', 'The drive has no bed block with the feet of the machine, so no moves can be worked out.'),
)

/** Moves are a search over all feet, and no machine has more than a dozen or so. */
export const maxFeet = 40

/** How many feet a bed has, where they are more than moves are worked out for. */
export function feetTooMany(bed: Block): number | undefined {
  const count = childrenOf(bed, 'foot').length
  return count > maxFeet ? count : undefined
}

/** The feet of a bed and how they are set, or why they are not known. Throws Unreadable. */
export const feetOf = (bed: Block | undefined): AlignmentOutcome<Feet> => (bed ? feetIn(bed) : noBed)

const feetIn = blockPlan((bed: Block): AlignmentOutcome<Feet> => {
  const count = feetTooMany(bed)
  if (count !== undefined)
    return failed(
      fault('too-many-feet', `The bed has ${count} feet. Moves are worked out for at most ${maxFeet}.`),
    )
  const feet: BedFoot[] = []
  for (const foot of childrenOf(bed, 'foot')) {
    const [x, y] = [statedFact(foot, 'foot.from-coupling'), statedFact(foot, 'foot.across')]
    if (x === undefined || y === undefined)
      return failed(
        fault(
          'no-feet',
          `Foot ${foot.name ?? ''} needs from-coupling and across before moves can be worked out.`,
        ),
      )
    const [up, down] = [statedFact(foot, 'foot.travel-up'), statedFact(foot, 'foot.travel-down')]
    const [sideways, pack] = [statedFact(foot, 'foot.hole-clearance'), statedFact(foot, 'foot.pack')]
    feet.push({
      name: foot.name ?? '',
      x,
      y,
      ...(up !== undefined && { up }),
      ...(down !== undefined && { down }),
      ...(sideways !== undefined && { sideways }),
      ...(pack !== undefined && { pack }),
    })
  }
  const stations = byStation(feet)
  const between = new Set(stations.slice(1, -1).flatMap((station) => station.feet))
  const placed = feet.map((foot, i) => (between.has(i) ? { ...foot, between: true } : foot))
  if (feet.length === 0)
    return failed(fault('no-feet', 'The bed has no foot blocks, so no moves can be worked out.'))
  const assumptions: string[] = []
  const adjuster = adjusterOf(bed, assumptions)
  return ok({ feet: placed, adjuster, assumptions })
})

/** The feet as those of one rigid machine. OutOfRange where they stand where none can. */
export const machineOn = memoizeByIdentity(({ feet }: Feet) => rigidMachine(feet))

const partsOfFlat = { 'whole-flat': 1, 'half-flat': 2, 'quarter-flat': 4 } as const

function adjusterOf(bed: Block, assumptions: string[]): Adjuster {
  if (statedFact(bed, 'bed.adjuster') === 'shims') {
    const stock = statedFact(bed, 'bed.shims')
    if (!stock) assumptions.push('the bed does not list its shims: the moves are given as lengths')
    else
      assumptions.push(
        'a pack is built of at most 4 of the shims listed (Bachus & Custodio, Know and Understand Centrifugal Pumps)',
      )
    return stock ? { by: 'shims', stock: stock.map((shim) => shim.value) } : { by: 'hand' }
  }
  const designation = statedFact(bed, 'bed.thread')
  const thread = designation === undefined ? undefined : parseThread(designation)
  if (thread?.ok)
    return {
      by: 'nut',
      thread: thread.value,
      partsOfFlat: partsOfFlat[statedFact(bed, 'bed.nut-step') ?? 'half-flat'],
    }
  assumptions.push(
    designation === undefined
      ? 'the bed does not state the thread of its studs: the moves are given as lengths, not turns'
      : `the pitch of thread ${designation} is not known here: the moves are given as lengths, not turns (write it as "M16x1.5" or "3/4-10 UNC")`,
  )
  return { by: 'hand' }
}

/** Undefined where what it needs is written but could not be read. */
function readable<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** Why the feet of this bed cannot set the slope of any machine; undefined when they can, or when they are not all known yet. */
export function bedFault(bed: Block): AlignmentFault | undefined {
  const read = readable(() => feetOf(bed))
  const rigid = read?.ok ? machineOn(read.value) : undefined
  return rigid && !rigid.ok ? asFault(rigid.problem) : undefined
}
