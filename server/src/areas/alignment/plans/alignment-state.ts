import type { Face } from '../../../engineering/alignment/face.ts'
import type { Target } from '../../../engineering/alignment/feet.ts'
import type { Pose } from '../../../engineering/alignment/pose.ts'
import type { Rim } from '../../../engineering/alignment/rim.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'

/** How the machine was found to stand, and what it is held against, m. */
export interface AlignmentState {
  readonly face: Face
  readonly rim: Rim | undefined
  readonly pose: Pose
  readonly gapVariation: Uncertain
  readonly offset: Uncertain | undefined
  readonly limits: { readonly gapVariation: number; readonly offset: number | undefined }
  /** Where the axis should be. */
  readonly target: Target
}
