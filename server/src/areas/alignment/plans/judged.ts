import type { InPlanes } from '../../../engineering/alignment/planes.ts'
import { verdict } from '../../../engineering/alignment/verdict.ts'
import type { Block } from '../../../job/model.ts'
import type { Verdict } from '../../../quantity/conformity.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { gapTolerance, offsetTolerance, type Tolerance } from './tolerance.ts'

/** A value against the target, and what is allowed of it, m. */
export interface JudgedFigure extends Tolerance {
  readonly value: Uncertain
  readonly verdict: Verdict
}

/** The gap variation against what the coupling allows, else against the common rules. */
export function judgeGaps(
  coupling: Block,
  flange: number,
  readAt: number,
  value: Uncertain,
  lookup: Lookup,
  assumptions: string[],
): JudgedFigure {
  const tolerance = gapTolerance(coupling, { flange, readAt }, lookup, assumptions)
  return { value, ...tolerance, verdict: verdict(value, tolerance.limit) }
}

/** The offset against what the coupling allows, else against the common rules. */
export function judgeOffset(
  coupling: Block,
  parts: InPlanes<Uncertain>,
  gaps: JudgedFigure,
  lookup: Lookup,
  assumptions: string[],
): JudgedFigure & { readonly parts: InPlanes<Uncertain> } {
  const value = {
    value: Math.hypot(parts.vertical.value, parts.horizontal.value),
    standard: Math.max(parts.vertical.standard, parts.horizontal.standard),
  }
  const tolerance = offsetTolerance(coupling, gaps, lookup, assumptions)
  return { value, parts, ...tolerance, verdict: verdict(value, tolerance.limit) }
}
