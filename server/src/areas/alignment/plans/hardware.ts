import { parseThread, type Thread } from '../../../engineering/thread.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { feetOf } from './feet.ts'
import type { BedFoot } from './steps.ts'

/** What the work on the feet and on the coupling needs to know of its nuts and bolts, where the job says it. SI. */
export interface Hardware {
  readonly feet: readonly BedFoot[]
  readonly thread?: Thread
  /** Smallest step of the lower nuts, where feet are set by them. */
  readonly partsOfFlat?: number
  /** What holds the feet down is tightened to, N·m. */
  readonly torque?: number
  readonly lowerTorque?: number
  readonly couplingBolts?: { readonly count: number; readonly thread: string; readonly torque?: number }
}

/** The nuts and bolts of a bed whose feet are known. A torque that cannot be read is none: the plan then sends to the maker's. Throws Unreadable
 * where the feet are written wrong. */
export function hardwareOf(bed: Block, coupling: Block): Hardware | undefined {
  const outcome = feetOf(bed)
  if (!outcome.ok) return undefined
  const { feet, adjuster } = outcome.value
  const designation = factOf(bed, 'bed.thread')?.value
  const thread = designation === undefined ? undefined : parseThread(designation)
  const [torque, lowerTorque] = [factOf(bed, 'bed.torque')?.value, factOf(bed, 'bed.lower-torque')?.value]
  const couplingBolts = factOf(coupling, 'coupling.bolts')?.value
  return {
    feet,
    ...(adjuster.by === 'nut' && { partsOfFlat: adjuster.partsOfFlat }),
    ...(thread?.ok && { thread: thread.value }),
    ...(torque !== undefined && { torque }),
    ...(lowerTorque !== undefined && { lowerTorque }),
    ...(couplingBolts && { couplingBolts }),
  }
}
