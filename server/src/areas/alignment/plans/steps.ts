import { memoizeByIdentity } from '../../../common/memoize-by-identity.ts'
import {
  anyOf,
  between,
  type Heights,
  shimHeights,
  stepHeights,
} from '../../../engineering/adjuster-heights.ts'
import { type NutMove, nutMove, nutTravel } from '../../../engineering/adjusters.ts'
import type { Foot, FootCorrection } from '../../../engineering/alignment/feet.ts'
import type { InPlanes } from '../../../engineering/alignment/planes.ts'
import { shimPack } from '../../../engineering/shim-packs.ts'
import type { Thread } from '../../../engineering/thread.ts'
import { expanded, type Uncertain } from '../../../quantity/uncertainty.ts'

/** How one foot gets its height: the lower nut of its stud, shims, by whatever is at hand, or not at all. */
export type FootStep =
  | {
      readonly by: 'nut'
      readonly move: NutMove
      /** A foot between the ends: its nut is run up until it touches, and `move` is about how far that is. */
      readonly touch: boolean
    }
  | {
      readonly by: 'shims'
      /** `make`: the pack there now is known, and becomes this one. */
      readonly action: 'put in' | 'take out' | 'make' | 'none'
      /** Of the pieces together, m; where there are none to take out, what is wanted. */
      readonly thickness: number
      /** Of the pack there now, m, where the whole of it is made anew. */
      readonly from?: number
      /** Of the shims listed, thickest first; none where they do not reach. */
      readonly pieces: readonly number[]
    }
  | { readonly by: 'hand' }
  | { readonly by: 'none' }

export interface CorrectedFoot extends FootCorrection {
  readonly step: FootStep
  /** What the step does to the height, m. */
  readonly moved: number
  /** How far the foot goes sideways, m, + to starboard. */
  readonly slid: number
}

export type Adjuster =
  | { readonly by: 'nut'; readonly thread: Thread; readonly partsOfFlat: number }
  | { readonly by: 'shims'; readonly stock: readonly number[] }
  | { readonly by: 'hand' }

/** A foot as the bed has it: how far it can still go, m, where that is said. */
export interface BedFoot extends Foot {
  readonly up?: number
  readonly down?: number
  readonly sideways?: number
  /** Thickness of the shims below it now. */
  readonly pack?: number
  /** It stands between the end stations: on studs its nut is run up until it touches, so that the ends alone carry. */
  readonly between?: boolean
}

/** Whether U (k = 2) is larger than the move itself: then not even its direction is sure. */
export const belowUncertainty = (move: Uncertain): boolean => expanded(move) > Math.abs(move.value)

/** A foot that is left alone. */
export const unmovedFoot = (foot: FootCorrection): CorrectedFoot => ({
  ...foot,
  step: { by: 'none' },
  moved: 0,
  slid: 0,
})

/** The height that one turn of the nuts changes by, at the finest that is asked of them. */
export const stepOf = ({ thread, partsOfFlat }: Extract<Adjuster, { by: 'nut' }>): number =>
  nutTravel({ turns: 0, flats: 1 / partsOfFlat }, thread.pitch)

/** As near as a nut is run up to a foot until it touches, m. Common practice, no source. */
export const touching = 1e-5

/** A turn that is only about right is said in quarter flats. */
const quarters = 4

/** The packs of a stock are the same for every foot. */
const packsOf = memoizeByIdentity(shimHeights)

/** Heights that the adjuster of a foot can make. */
export function heightsOf(
  { up, down, pack, between: middle }: BedFoot,
  adjuster: Exclude<Adjuster, { by: 'hand' }>,
): Heights {
  const travel = { ...(up !== undefined && { up }), ...(down !== undefined && { down }) }
  if (adjuster.by === 'nut') return stepHeights(middle ? touching : stepOf(adjuster), travel)
  // What lies under the foot is taken to come out in steps of the thinnest shim, as far as there is any; a pack whose thickness is said can be
  // made anew as well.
  const { stock } = adjuster
  const out = stepHeights(Math.min(...stock), { up: 0, ...(pack !== undefined && { down: pack }) })
  const packs = packsOf(stock)
  const all = anyOf([out, packs(), ...(pack === undefined ? [] : [packs(pack)])])
  return between(all, -(down ?? 100), up ?? 100)
}

/** A move of a foot as it is made. Lengths without an adjuster that is known are set by hand. */
export function stepFor(
  foot: FootCorrection,
  { vertical, horizontal }: InPlanes<number>,
  adjuster: Adjuster,
  { pack, between = false }: Pick<BedFoot, 'pack' | 'between'> = {},
): CorrectedFoot {
  const done = (step: FootStep): CorrectedFoot => ({ ...foot, step, moved: vertical, slid: horizontal })
  if (adjuster.by === 'hand') return done({ by: 'hand' })
  if (adjuster.by === 'nut') {
    const move = nutMove(vertical, adjuster.thread, between ? quarters : adjuster.partsOfFlat)
    return done({ by: 'nut', move: { ...move, left: foot.vertical.value - move.moved }, touch: between })
  }
  if (Math.abs(vertical) < 1e-9) return done({ by: 'shims', action: 'none', thickness: 0, pieces: [] })
  const exact = (wanted: number) => {
    const { pieces, thickness } = shimPack(wanted, adjuster.stock)
    return Math.abs(thickness - wanted) < 1e-7 ? { pieces, thickness } : undefined
  }
  const added = vertical > 0 ? exact(vertical) : undefined
  if (added)
    return done({ by: 'shims', action: 'put in', ...added, ...(pack !== undefined && { from: pack }) })
  // Where the whole pack comes out, the sum may be a hair below nothing.
  const anew = pack === undefined ? undefined : exact(Math.max(0, pack + vertical))
  if (anew && pack !== undefined) return done({ by: 'shims', action: 'make', from: pack, ...anew })
  const taken = exact(-vertical)
  return done({ by: 'shims', action: 'take out', thickness: -vertical, pieces: taken?.pieces ?? [] })
}
