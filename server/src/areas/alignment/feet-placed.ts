import { type Block, childrenOf, factOf } from '../../job/model.ts'
import { idOf } from '../../store/block-by-id.ts'
import type { BlockId } from '../../store/block-id.ts'
import { blockPlan } from '../../store/plan.ts'
import { feetTooMany } from './plans/feet.ts'

/** A foot whose place is stated. */
export interface PlacedFoot {
  readonly block: BlockId
  readonly name: string
  /** From the coupling, and across, m. */
  readonly x: number
  readonly y: number
}

/** None where there are too many, which is a finding of its own. */
export const placedFeet = blockPlan((bed: Block): readonly PlacedFoot[] =>
  feetTooMany(bed)
    ? []
    : childrenOf(bed, 'foot').flatMap((block) => {
        const [x, y] = [factOf(block, 'foot.from-coupling')?.value, factOf(block, 'foot.across')?.value]
        return x !== undefined && y !== undefined
          ? [{ block: idOf(block), name: block.name ?? 'the other', x, y }]
          : []
      }),
)

/** Studs do not stand nearer to each other than this, m. */
const minStudDistance = 0.01

/** Whether two feet that stand so would stand on one spot. */
export const onOneSpot = (
  a: { readonly x: number; readonly y: number },
  b: { readonly x: number; readonly y: number },
): boolean => Math.hypot(a.x - b.x, a.y - b.y) < minStudDistance
