import type { Hypothesis } from '../engineering/alignment/mismatch.ts'
import type { Lookup } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'
import { againstMoves, outdated } from './alignment-log.ts'
import { sayExplanations } from './alignment-log-words.ts'

/** What a reading shows of the moves before it, where that is not what they should have done. */
export interface Slip {
  readonly words: string
  /** The reading itself may be wrong: steps from it could lead away. */
  readonly ofTheReading: boolean
}

/** After these the reading shows the machine as it stands, whatever went wrong with the move. */
const ofTheMove: ReadonlySet<Hypothesis['type']> = new Set([
  'turned-the-wrong-way',
  'did-not-follow',
  'part-of-the-way',
  'wrong-side',
])

export function slipOf(reading: Block, lookup: Lookup): Slip | undefined {
  const against = againstMoves(reading, lookup)
  if (against?.type !== 'compared' || against.mismatch.noise || outdated(reading, lookup)) return undefined
  const { explanations } = against.mismatch
  const ofTheReading =
    explanations.length === 0 || explanations.some(({ hypothesis }) => !ofTheMove.has(hypothesis.type))
  return {
    words: `The moves since ${against.since} should have brought something else. ${sayExplanations(against, lookup.system) ?? ''}${
      ofTheReading ? ' Read again before anything is moved: no moves are given from this reading.' : ''
    }`,
    ofTheReading,
  }
}
