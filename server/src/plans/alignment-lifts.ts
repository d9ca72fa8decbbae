import { type NutMove, nutMove } from '../engineering/adjusters.ts'
import { softFeet } from '../engineering/alignment/soft-foot.ts'
import { shimPack } from '../engineering/shim-packs.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import type { FootMove } from '../vocabulary/shapes/foot-move.ts'
import { feetOf } from './alignment-feet.ts'
import { movesBetween, readingsUpTo } from './alignment-moves.ts'
import { said, Unreadable } from './said.ts'
import { stepOf } from './steps.ts'

/** Lift (m) above which a foot is soft. Source: general industry alignment tolerance table, 0.06 mm at any speed; 0.05 mm is common practice. */
export const softLimit = 6e-5

/** What sets the height of a soft foot. `hand`: neither thread nor shims are known. */
export type SoftStep =
  | {
      readonly by: 'nut'
      readonly move: NutMove
      /** The smallest that is asked of the nut, m. */
      readonly smallest: number
      /** The way the lower nut goes to raise the foot, seen from above. */
      readonly raises: NonNullable<NutMove['lowerNut']>
    }
  | {
      readonly by: 'shims'
      /** Of the stock, nearest to what is missing; none where they leave the foot soft, or where no stock is listed. */
      readonly pieces: readonly number[]
      /** Of the pieces together, m. */
      readonly thickness: number
      /** The bed lists its shims. */
      readonly listed: boolean
    }
  | { readonly by: 'hand'; readonly onStuds: boolean }

/** Why no foot can be named: fewer than three lifts, all rise alike, several rise and none of them most, or the worst was moved since. */
type Unnamed = 'too-few-lifts' | 'alike' | 'none-stands-out' | 'moved-since'

/** Feet that rise when slackened, and what to do at the worst. */
export interface SoftFound {
  readonly soft: readonly string[]
  /** The worst foot and what is missing under it, m; or why there is none. */
  readonly missing: { readonly name: string; readonly height: number; readonly step: SoftStep } | Unnamed
}

/** The soft feet of a reading; undefined where there are none, or no lifts were read. With fewer than three lifts none can be held against the
 * others, so none is said to stand out. Throws Unreadable. */
export function softOf(reading: Block, lookup: Lookup): SoftFound | undefined {
  const lifts = said(reading, 'reading.lifts')
  if (!lifts) return undefined
  const gaugeStep = factOf(reading, 'reading.gauge')?.value ?? 0
  if (lifts.length < 3) {
    const soft = lifts.filter(({ lift }) => lift > softLimit).map(({ name }) => name)
    return soft.length > 0 ? { soft, missing: 'too-few-lifts' } : undefined
  }
  const { soft, missing, alike } = softFeet(lifts, softLimit, gaugeStep)
  if (soft.length === 0) return undefined
  if (!missing) return { soft, missing: alike ? 'alike' : 'none-stands-out' }
  return { soft, missing: { ...missing, step: stepFor(missing.height, lookup.near('bed')) } }
}

/** The step that comes nearest to a height with what the bed has. */
function stepFor(height: number, bed: Block | undefined): SoftStep {
  const by = bed && factOf(bed, 'bed.adjuster')?.value
  try {
    const step = stepBy(height, feetOf(bed))
    if (step) return step
  } catch (error) {
    // That a foot is soft does not depend on the bed: what is wrong there is told elsewhere.
    if (!(error instanceof Unreadable || error instanceof RangeError)) throw error
  }
  return by === 'shims'
    ? { by: 'shims', pieces: [], thickness: 0, listed: false }
    : { by: 'hand', onStuds: by !== undefined }
}

function stepBy(height: number, feet: ReturnType<typeof feetOf>): SoftStep | undefined {
  const adjuster = feet.ok ? feet.adjuster : undefined
  if (adjuster?.by === 'nut') {
    const { thread, partsOfFlat } = adjuster
    const smallest = stepOf(adjuster)
    const raises = nutMove(smallest, thread, partsOfFlat).lowerNut ?? 'counter-clockwise'
    return { by: 'nut', move: nutMove(height, thread, partsOfFlat), smallest, raises }
  }
  if (adjuster?.by !== 'shims') return undefined
  const { pieces, thickness, left } = shimPack(height, adjuster.stock)
  return Math.abs(left) > softLimit
    ? { by: 'shims', pieces: [], thickness: 0, listed: true }
    : { by: 'shims', pieces, thickness, listed: true }
}

/** The soft feet of the last reading up to this one that has lifts: a foot stays soft until lifts are read again, or until a move has been made
 * at it. */
export function softUpTo(
  reading: Block,
  lookup: Lookup,
): { readonly found: SoftFound; readonly in: Block } | undefined {
  const last = readingsUpTo(reading).findLast(
    (one) => factOf(one, 'reading.lifts') || one.unread.has('lifts'),
  )
  const found = last && softOf(last, lookup)
  if (!found) return undefined
  const moves = last === reading ? [] : movesBetween(last, reading)
  const moved = new Set(
    moves.flatMap((move) => [...move.others].filter(([, by]) => isRaised(by.value)).map(([name]) => name)),
  )
  const soft = found.soft.filter((name) => !moved.has(name))
  if (soft.length === 0) return undefined
  const { missing } = found
  const stands =
    soft.length === found.soft.length || (typeof missing === 'object' && soft.includes(missing.name))
  return { found: { soft, missing: stands ? missing : 'moved-since' }, in: last }
}

/** Whether a line of a move changes the height of its foot. */
const isRaised = (by: unknown): boolean => {
  const { turn = 0, rise = 0 } = by as FootMove
  return turn !== 0 || rise !== 0
}
