import { assumedGapLimit } from '../engineering/alignment/gap-variation.ts'
import type { InPlanes } from '../engineering/alignment/planes.ts'
import { type Verdict, verdict } from '../engineering/alignment/verdict.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf, type Value } from '../job/model.ts'
import type { Uncertain } from '../quantity/uncertainty.ts'
import { said } from './said.ts'

export interface Judged {
  readonly value: Uncertain
  readonly limit: number
  /** Where the limit is from: `the maker`, `the job file`, or the rule that was assumed. */
  readonly limitFrom: string
  readonly verdict: Verdict
}

const limitSource = (value: Value<unknown>): string =>
  value.provenance?.words.includes('maker') ? 'the maker' : 'the job file'

/** The gap variation against what the coupling allows, else against the common rule. */
export function judgeGaps(
  coupling: Block,
  flange: number,
  readAt: number,
  value: Uncertain,
  lookup: Lookup,
  assumptions: string[],
): Judged {
  said(coupling, 'coupling.gap-variation')
  const stated = factOf(coupling, 'coupling.gap-variation')
  if (stated?.value.high !== undefined) {
    if (Math.abs(readAt - flange) > 1e-6)
      assumptions.push(
        `the gap variation allowed holds where the gauge goes in, on ${lookup.show(readAt, 'length')}`,
      )
    return {
      value,
      limit: stated.value.high,
      limitFrom: limitSource(stated),
      verdict: verdict(value, stated.value.high),
    }
  }
  // The rule is of the flange; on a smaller circle the same slope shows less, so the limit shrinks with it.
  const limit = assumedGapLimit(flange) * (readAt / flange)
  assumptions.push(
    'no gap variation is stated: 0.001 of the diameter is allowed (0.001 in per inch of flange diameter, common practice)',
  )
  return {
    value,
    limit,
    limitFrom: '0.001 of the circle the gauge goes in on, common practice',
    verdict: verdict(value, limit),
  }
}

/** The offset against what the coupling allows, else against the limit of the gap variation. */
export function judgeOffset(
  coupling: Block,
  parts: InPlanes<Uncertain>,
  gaps: Judged,
  lookup: Lookup,
  assumptions: string[],
): Judged & { readonly parts: InPlanes<Uncertain> } {
  const value = {
    value: Math.hypot(parts.vertical.value, parts.horizontal.value),
    standard: Math.max(parts.vertical.standard, parts.horizontal.standard),
  }
  said(coupling, 'coupling.offset')
  const stated = factOf(coupling, 'coupling.offset')
  const limit = stated?.value.high ?? gaps.limit
  if (stated?.value.high === undefined)
    assumptions.push(
      `no offset is stated: it is held against the same ${lookup.show(limit, 'length')} as the gap variation (common practice, no source)`,
    )
  return {
    value,
    parts,
    limit,
    limitFrom: stated ? limitSource(stated) : 'as the gap variation, common practice, no source',
    verdict: verdict(value, limit),
  }
}
