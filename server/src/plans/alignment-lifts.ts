import { type SoftFeet, softFeet } from '../engineering/alignment/soft-foot.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import type { FootMove } from '../vocabulary/shapes/foot-move.ts'
import type { Doubt } from './alignment-doubts.ts'
import { movesBetween, readingsUpTo } from './alignment-moves.ts'
import { said } from './said.ts'

/** Lift (m) above which a foot is soft. Source: general industry alignment tolerance table, 0.06 mm at any speed; 0.05 mm is common practice. */
export const softLimit = 6e-5

/** The soft feet of a reading; undefined where there are none, or no lifts were read. With fewer than three lifts none can be held against the
 * others, so no shim is named. Throws Unreadable. */
export function softOf(reading: Block): SoftFeet | undefined {
  const lifts = said(reading, 'reading.lifts')
  if (!lifts) return undefined
  const found =
    lifts.length < 3
      ? { soft: lifts.filter(({ lift }) => lift > softLimit).map(({ name }) => name) }
      : softFeet(lifts, softLimit)
  return found.soft.length > 0 ? found : undefined
}

/** The soft feet of the last reading up to this one that has lifts: a foot stays soft until lifts are read again, or until a move has been made
 * at it. */
export function softUpTo(reading: Block): { readonly found: SoftFeet; readonly in: Block } | undefined {
  const last = readingsUpTo(reading).findLast(
    (one) => factOf(one, 'reading.lifts') || one.unread.has('lifts'),
  )
  const found = last && softOf(last)
  if (!found) return undefined
  const moves = last === reading ? [] : movesBetween(last, reading)
  const moved = new Set(
    moves.flatMap((move) => [...move.others].filter(([, by]) => isRaised(by.value)).map(([name]) => name)),
  )
  const soft = found.soft.filter((name) => !moved.has(name))
  if (soft.length === 0) return undefined
  const shim = found.shim && soft.includes(found.shim.name) ? { shim: found.shim } : {}
  return { found: { soft, ...shim }, in: last }
}

/** Whether a line of a move changes the height of its foot. */
const isRaised = (by: unknown): boolean => {
  const { turn = 0, rise = 0 } = by as FootMove
  return turn !== 0 || rise !== 0
}

/** What to do about soft feet: `shim fwd-port by 0.08 mm, then read the lifts again`. */
export const aboutSoft = ({ shim }: SoftFeet, lookup: Lookup): string =>
  shim
    ? `shim ${shim.name} by ${lookup.show(shim.thickness, 'length')}, then read the lifts again`
    : 'read the lifts of all feet; where they rise alike no shim helps: look at the bed and its fastening'

/** Why the reading is not to be trusted while a foot is soft. */
export function softDoubt(found: SoftFeet, lookup: Lookup, since?: string): Doubt {
  const several = found.soft.length > 1
  return {
    type: 'soft-foot',
    words: `${several ? 'Feet' : 'Foot'} ${found.soft.join(', ')} ${several ? 'are' : 'is'} soft: slackened, ${several ? 'they rise' : 'it rises'} by more than ${lookup.show(softLimit, 'length')}, so the machine bends as the feet are tightened and this reading is not to be trusted.${since === undefined ? '' : ` That was found at the reading ${since}, and the lifts were not read again since.`} First ${aboutSoft(found, lookup)}, then read the coupling again.`,
  }
}
