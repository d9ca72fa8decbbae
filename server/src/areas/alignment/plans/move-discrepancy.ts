import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { isolateBriefly } from '../../common/dangers.ts'
import { correctionOf } from './correction.ts'
import { readingInLog } from './log.ts'
import { formatWhatFirst } from './move-discrepancy-inspections.ts'
import { formatExplanations, formatRoughly, type ShownComparison } from './move-discrepancy-words.ts'
import { type Comparison, flangeMisalignment } from './reading-comparison.ts'

/** What a reading shows of the moves before it, where that is not what they should have done; or what an earlier one showed that is still open. */
export interface MoveDiscrepancy {
  readonly words: string
  /** What was compared, of this reading or of the earlier one. */
  readonly comparison: Comparison
  /** Where it is of an earlier reading: the words for that. */
  readonly since?: string
  readonly explained: string
  /** What to do about it. */
  readonly first: string
  /** The reading, or the bed as the job has it, may be wrong: steps from it could lead away. */
  readonly withholds: boolean
}

/** Undefined where the reading shows what the moves should have done and no doubt is open, or where a later one counts. */
export const moveDiscrepancy = plan((reading: Block, lookup: Lookup): MoveDiscrepancy | undefined => {
  const { against, doubt, outdated } = readingInLog(reading, lookup)
  const own = against?.type === 'compared' && !against.mismatch.noise ? against : undefined
  const comparison = doubt?.comparison ?? own
  if (!comparison || outdated) return undefined
  const carried = comparison !== own
  const outcome = carried ? correctionOf(reading, lookup) : undefined
  const now = outcome?.ok ? flangeMisalignment(outcome.value, lookup) : undefined
  const shown: ShownComparison = {
    ...comparison,
    ...(carried && { now: now ?? comparison.found }),
    ...(doubt?.again && { again: true }),
  }
  const { since, at } = comparison
  const explained = formatExplanations(shown, lookup.system)
  const withholds = doubt !== undefined
  const first = `${formatWhatFirst(shown, lookup.system)} ${
    withholds
      ? 'Until then this reading gives no steps: they could lead the wrong way.'
      : 'This reading shows the machine as it stands, so the steps start from it.'
  }`
  const what = carried
    ? `${at} did not match the moves since ${since}, and no later reading explains why.`
    : formatRoughly(comparison)
  return {
    words: `${what} ${explained} ${isolateBriefly} ${first}`,
    comparison,
    ...(carried && { since: what }),
    explained,
    first,
    withholds,
  }
})
