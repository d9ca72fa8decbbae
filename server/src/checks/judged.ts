// What the checks of gaps and of offsets have in common: the same rules hold for faces and rims.
import type { Closure } from '../engineering/alignment/closure.ts'
import type { Correction } from '../plans/alignment.ts'
import { sayAngle } from '../plans/alignment-fault.ts'
import type { Judged } from '../plans/alignment-judged.ts'
import { type RoundFact, sayRound } from '../plans/alignment-readings.ts'
import { slipOf } from '../plans/alignment-slip.ts'
import { sayOpen } from '../plans/closure-words.ts'
import { saidGauge, saidLength, saidLimit, saidSure } from '../quantity/said.ts'
import type { Context, Reported } from './check.ts'
import { atRead } from './correction.ts'

/** What to do about a reading that is outside: move, unless no moves are given from it. */
export function afterOutside(c: Correction, context: Context): string {
  if (c.movedSince)
    return 'The machine was moved after this reading: go by the readings taken since, or read again.'
  if (c.laterReading !== undefined) return `A later reading, ${c.laterReading}, counts: go by that.`
  if (c.contradictory) return 'Read again before anything is moved: the readings contradict each other.'
  if (slipOf(context.block, context)?.withholds)
    return 'Move nothing yet: the moves before this reading had another effect than they should. The hover on it and `shaftwright plan` say what to do first.'
  if (c.withheld && c.withheld !== 'far-off')
    return 'No moves are given from this reading. The hover on it and `shaftwright plan` say why, and what to do first.'
  return 'Follow the hover on the reading or `shaftwright plan`: it gives the moves, or what has to be done before them. Isolate the drive and support the machine first, and read again after the moves.'
}

/** What a figure is counted from, where that is not the shaft as it hangs. */
export const countedFrom = ({ target }: Correction, what: string): string =>
  target ? `Counted from the target, the ${what}` : `The ${what}`

/** A figure too near its limit for the gauge to tell. `what`: `gap variation`, `offset`. */
export function undecided(
  context: Context,
  c: Correction,
  what: string,
  { judged, by }: { readonly judged: Judged | undefined; readonly by: RoundFact | undefined },
): readonly Reported[] {
  if (judged?.verdict !== 'undecided') return []
  const found = saidSure(judged.value, context.system)
  const allowed = saidLimit(judged.limit, context.system)
  return [
    atRead(context, by, {
      message: `${countedFrom(c, what)} is ${found} and ${allowed} is allowed: with this gauge it cannot be decided whether it is within.`,
      todo:
        c.decidedBy === undefined
          ? 'Read again: no finer gauge alone would decide.'
          : `Read with a gauge of ${saidGauge(c.decidedBy, context.system)} steps or finer.`,
      found,
      limit: `at most ${allowed}`,
      assumptions: c.assumptions,
    }),
  ]
}

/** Readings of one round that do not agree among themselves. */
export function doNotClose(
  context: Context,
  by: RoundFact,
  closure: Closure | undefined,
): readonly Reported[] {
  if (closure?.state !== 'open') return []
  const found = saidLength(closure.difference, context.system)
  const limit = saidLimit(closure.allowed, context.system)
  const which =
    closure.odd === undefined
      ? 'Which one is wrong cannot be told from these.'
      : `The one at ${sayAngle(closure.odd)} is the odd one out.`
  return [
    atRead(context, by, {
      message: `${sayOpen(closure, sayRound(by), context.system)} ${which}`,
      todo: 'Read all of them again before anything is moved.',
      found,
      limit: `at most ${limit}`,
    }),
  ]
}
