import { memoizeByIdentity } from '../../../common/memoize-by-identity.ts'
import { type NutMove, nutMove } from '../../../engineering/adjusters.ts'
import { softFeet } from '../../../engineering/alignment/soft-foot.ts'
import { shimPack } from '../../../engineering/shim-packs.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'
import { statedFact, Unreadable } from '../../common/stated-fact.ts'
import { feetOf } from './feet.ts'
import { lastReading, movesAfter, plannedAfter, readingsOf } from './moves.ts'
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

/** Why no foot can be named: fewer than three lifts, all rise alike, several rise and none of them most, they were not read together, or a foot was
 * moved since. */
type Unnamed = 'too-few-lifts' | 'alike' | 'none-stands-out' | 'read-apart' | 'moved-since'

/** Feet that rise when slackened, and what to do at the worst. */
export interface SoftFound {
  readonly soft: readonly string[]
  /** The worst foot and what is missing under it, m; or why there is none. */
  readonly missing: { readonly name: string; readonly height: number; readonly step: SoftStep } | Unnamed
}

/** The soft feet of a reading; undefined where there are none, or no lifts were read. With fewer than three lifts none can be held against the
 * others, so none is said to stand out. Throws Unreadable. */
export function softOf(reading: Block, lookup: Lookup): SoftFound | undefined {
  const lifts = statedFact(reading, 'reading.lifts')
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
    if (!(error instanceof Unreadable || error instanceof OutOfRange)) throw error
  }
  return by === 'shims'
    ? { by: 'shims', pieces: [], thickness: 0, listed: false }
    : { by: 'hand', onStuds: by !== undefined }
}

function stepBy(height: number, feet: ReturnType<typeof feetOf>): SoftStep | undefined {
  const adjuster = feet.ok ? feet.value.adjuster : undefined
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

/** Feet that are still soft, and the readings that found them so, oldest first. */
interface StillSoft {
  readonly found: SoftFound
  readonly in: readonly BlockId[]
}

/** A reading whose lifts cannot be read. */
interface Unread {
  readonly unread: BlockId
}

/** What is soft up to each of some readings, oldest first, or what stands in the way of knowing. */
function softAlong(
  readings: readonly Block[],
  lookup: Lookup,
): ReadonlyMap<BlockId, StillSoft | Unread | undefined> {
  const along = new Map<BlockId, StillSoft | Unread | undefined>()
  const softSince = new Map<string, Block>()
  /** How many moves before each reading changed the height of a foot. */
  const raisedBefore = new Map<Block, number>()
  let raised = 0
  // Later lifts count where older ones cannot be read: those are an error of their own.
  let unread: Unread | undefined
  let kept:
    | { readonly soft: readonly string[]; readonly in: readonly Block[]; readonly found: SoftFound }
    | undefined
  for (const reading of readings) {
    raisedBefore.set(reading, raised)
    if (reading.unread.has('lifts') || factOf(reading, 'reading.lifts')) {
      unread = reading.unread.has('lifts') ? { unread: idOf(reading) } : undefined
      if (!unread) {
        for (const { name } of statedFact(reading, 'reading.lifts') ?? []) softSince.delete(name)
        for (const name of softOf(reading, lookup)?.soft ?? []) softSince.set(name, reading)
      }
      const since = [...new Set(softSince.values())]
      const latest = since.at(-1)
      const found = latest && softOf(latest, lookup)
      kept = found && { soft: [...softSince.keys()], in: since, found }
    }
    along.set(
      idOf(reading),
      unread ?? (kept && asFound(kept, raised > (raisedBefore.get(kept.in.at(-1) ?? reading) ?? 0))),
    )
    raised += [...movesAfter(reading), ...plannedAfter(reading)].filter(raisesAny).length
  }
  return along
}

function asFound(
  {
    soft,
    in: readings,
    found,
  }: { readonly soft: readonly string[]; readonly in: readonly Block[]; readonly found: SoftFound },
  moved: boolean,
): StillSoft {
  const together = readings.length === 1 && soft.length === found.soft.length
  return {
    found: { soft, missing: moved ? 'moved-since' : together ? found.missing : 'read-apart' },
    in: readings.map(idOf),
  }
}

const softInDrive = plan((drive: Block, lookup: Lookup) => softAlong(readingsOf(drive), lookup))

/** The feet that are soft up to this reading. A foot stays soft until its own lift is read again and is within the limit: lifts of other feet say
 * nothing of it, and whether a move at it has helped only its lift can show. Throws Unreadable. */
export function softUpTo(reading: Block, lookup: Lookup): StillSoft | undefined {
  const drive = reading.parent
  const along = drive ? softInDrive(drive, lookup) : softAlong([reading], lookup)
  const found = along.get(idOf(reading))
  if (!found || 'found' in found) return found
  statedFact(lookup.blockOf(found.unread), 'reading.lifts')
  return undefined
}

const asSet = memoizeByIdentity((readings: readonly BlockId[]): ReadonlySet<BlockId> => new Set(readings))

/** Whether a foot that this reading found soft was not found to bear since. Throws Unreadable. */
export function isStillSoft(reading: Block, lookup: Lookup): boolean {
  const last = reading.parent && lastReading(reading.parent)
  const still = last && softUpTo(last, lookup.from(last))
  return !last || (still !== undefined && asSet(still.in).has(idOf(reading)))
}

/** Whether a move changes the height of any foot. */
const raisesAny = ({ others }: Block): boolean => [...others.values()].some(({ value }) => isRaised(value))

/** Whether a line of a move changes the height of its foot. */
const isRaised = (by: unknown): boolean => {
  const { turn = 0, rise = 0 } = by as FootMove
  return turn !== 0 || rise !== 0
}
