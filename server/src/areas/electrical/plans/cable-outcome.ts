import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { type Fault, failed, type Outcome } from '../../common/outcome.ts'
import { Unreadable } from '../../common/stated-fact.ts'

/** What stands in the way. `unsaid`: the job does not state what is needed. `unread`: something that is written and could not be read, which is
 * said where it stands. */
export interface CableFault extends Fault<'unsaid' | 'unread' | 'impossible'> {
  /** What is missing or wrong, to stand in a sentence. */
  readonly because: string
}

export type CableOutcome<T> = Outcome<T, CableFault>

const fault = (type: CableFault['type'], because: string) =>
  failed({ type, because, words: `The cable cannot be worked out: ${because}.` })

/** `what`: what the job does not say and the result cannot be worked out without. */
export const unsaid = (what: string) => fault('unsaid', `the job does not state ${what}`)

/** Never throws on figures: what the engineering floor rejects comes back as a fault. */
export function outcomeOf<T>(work: () => CableOutcome<T>): CableOutcome<T> {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error
    return fault(error instanceof Unreadable ? 'unread' : 'impossible', error.message)
  }
}
