import { allowsSteps } from '../engineering/alignment/mismatch.ts'
import type { Lookup } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'
import { againstMoves, outdated } from './alignment-log.ts'
import { remembered } from './remembered.ts'
import { sayWhatFirst } from './slip-looks.ts'
import { sayExplanations } from './slip-words.ts'

/** What a reading shows of the moves before it, where that is not what they should have done. */
export interface Slip {
  readonly words: string
  /** What to do about it. */
  readonly first: string
  /** The reading, or the bed as the job has it, may be wrong: steps from it could lead away. */
  readonly withholds: boolean
}

/** Undefined where the reading shows what the moves should have done, or where a later one counts. */
export const slipOf = remembered((reading: Block, lookup: Lookup): Slip | undefined => {
  const against = againstMoves(reading, lookup)
  if (against?.type !== 'compared' || against.mismatch.noise || outdated(reading, lookup)) return undefined
  const withholds = !allowsSteps(against.mismatch)
  const first = `${sayWhatFirst(against, lookup.system)} ${
    withholds
      ? 'Until then this reading gives no steps: they could lead the wrong way.'
      : 'This reading shows the machine as it stands, so the steps go on from it.'
  }`
  return {
    words: `The moves since ${against.since} should have brought something else. ${sayExplanations(against, lookup.system)} ${first}`,
    first,
    withholds,
  }
})
