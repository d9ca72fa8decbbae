import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { Unreadable } from '../../common/stated-fact.ts'
import type { Unsaid } from './cable-circuit.ts'

/** What stands in the way, with words for a person. `unread`: something that is written and could not be read, which is said where it stands. */
export interface CableFault {
  readonly type: 'unsaid' | 'unread' | 'impossible'
  /** What is missing or wrong, to stand in a sentence. */
  readonly because: string
  readonly words: string
}

export type CableOutcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: CableFault }

const fault = (type: CableFault['type'], because: string) => ({
  ok: false as const,
  fault: { type, because, words: `The cable cannot be worked out: ${because}.` },
})

/** Never throws on figures: what the engineering floor rejects comes back as a fault. */
export function outcomeOf<T extends object>(work: () => T | Unsaid): CableOutcome<T> {
  try {
    const value = work()
    return 'unsaid' in value ? fault('unsaid', `the job does not state ${value.unsaid}`) : { ok: true, value }
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error
    return fault(error instanceof Unreadable ? 'unread' : 'impossible', error.message)
  }
}
