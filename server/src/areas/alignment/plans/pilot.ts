import type { Target } from '../../../engineering/alignment/feet.ts'
import type { Pose } from '../../../engineering/alignment/pose.ts'
import { formatLength } from '../../../quantity/format-measures.ts'
import type { Lookup } from '../../../store/lookup.ts'
import type { Doubt } from './doubts.ts'

const offsetOf = ({ vertical, horizontal }: Target): number => Math.hypot(vertical.offset, horizontal.offset)

/** Whether the machine flange is to stand off the shaft's. A micrometre is none. */
export const hasOffset = (target: Target): boolean => offsetOf(target) > 1e-6

/** A pilot that is engaged holds the flanges together, so that a target off the shaft's centre can neither be seen nor set. */
export const pilotDoubt = ({ offsetBasis }: Pose, target: Target, lookup: Lookup): readonly Doubt[] =>
  offsetBasis === 'pilot' && hasOffset(target)
    ? [
        {
          type: 'pilot-engaged',
          words: `The machine flange must stand ${formatLength(offsetOf(target), lookup.system)} off the centre of the shaft, but no offset was read and the pilot holds the two together. Part the coupling until the pilot is free, and read the rims as well.`,
        },
      ]
    : []
