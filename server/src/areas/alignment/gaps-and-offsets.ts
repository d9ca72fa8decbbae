import type { Lookup } from '../../store/lookup.ts'
// What the checks of gaps and of offsets have in common: the same rules hold for faces and rims.

import type { Reported } from '../../checks/check.ts'
import { firstLine } from '../../checks/one-line.ts'
import type { Closure } from '../../engineering/alignment/closure.ts'
import { elide } from '../../quantity/elide.ts'
import {
  formatGaugeStep,
  formatLength,
  formatLimit,
  formatUncertain,
} from '../../quantity/format-measures.ts'
import { atRead } from './at-read.ts'
import { formatOpen } from './plans/closure-words.ts'
import type { Correction } from './plans/correction.ts'
import { formatAngle } from './plans/fault.ts'
import type { JudgedFigure } from './plans/judged.ts'
import { moveDiscrepancy } from './plans/move-discrepancy.ts'
import { lastReading } from './plans/moves.ts'
import { isJudged } from './plans/reading-history.ts'
import { formatRoundFact, type RoundFact } from './plans/readings.ts'

/** What to do about a reading that is outside: move, unless no moves are given from it. */
export function afterOutside(c: Correction, lookup: Lookup): string {
  const last = lookup.block.parent && lastReading(lookup.block.parent)
  const isLast = last === undefined || last === lookup.block
  if (!isLast && isJudged(last, lookup)) return `Use the later reading, ${elide(last.name ?? '')}, instead.`
  if (c.movedSince) return 'Read again: the machine was moved after this reading.'
  if (!isLast) return `Read again: the later reading, ${elide(last.name ?? '')}, cannot be relied on.`
  if (c.contradictory) return 'Read again before you move anything: the readings contradict each other.'
  if (moveDiscrepancy(lookup.block, lookup)?.withholds)
    return 'Do not move anything yet. The moves before this reading had an unexpected effect. The plan says what to do first.'
  if (c.withheld && c.withheld !== 'far-off')
    return 'Follow the plan: it says why it gives no moves, and what to do first.'
  return 'Follow the plan: it gives the moves, or what to do before them. Read again after the moves.'
}

/** What a figure is counted from, where that is not the shaft as it hangs. */
export const countedFrom = ({ target }: Correction, what: string): string =>
  `The ${what}${target ? ', counted from the target,' : ''}`

/** A figure too near its limit for the gauge to tell. `what`: `gap variation`, `offset`. */
export function undecided(
  lookup: Lookup,
  c: Correction,
  what: string,
  { judged, by }: { readonly judged: JudgedFigure | undefined; readonly by: RoundFact | undefined },
): readonly Reported[] {
  if (judged?.verdict !== 'undecided') return []
  const found = formatUncertain(judged.value, lookup.system)
  const allowed = formatLimit(judged.limit, lookup.system)
  return [
    atRead(lookup, by, {
      message: `This gauge cannot decide the ${what}: ${found}, with ${allowed} allowed.`,
      ...(c.target && { detail: 'It is counted from the target.' }),
      todo:
        c.decidedBy === undefined
          ? 'Read again: a finer gauge alone would not decide it.'
          : `Use a gauge with steps of ${formatGaugeStep(c.decidedBy, lookup.system)} or finer.`,
      found,
      limit: `at most ${allowed}`,
      assumptions: c.assumptions,
    }),
  ]
}

/** Readings of one round that do not agree among themselves. */
export function doNotClose(lookup: Lookup, by: RoundFact, closure: Closure | undefined): readonly Reported[] {
  if (closure?.state !== 'open') return []
  const found = formatLength(closure.difference, lookup.system)
  const limit = formatLimit(closure.allowed, lookup.system)
  const which =
    closure.odd === undefined
      ? 'These readings do not show which one is wrong.'
      : `The one at ${formatAngle(closure.odd)} does not fit the others.`
  return [
    atRead(lookup, by, {
      ...firstLine(`${formatOpen(closure, formatRoundFact(by), lookup.system)} ${which}`),
      todo: 'Read all of them again before you move anything.',
      found,
      limit: `at most ${limit}`,
    }),
  ]
}
