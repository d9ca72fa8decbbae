import { OutOfRange } from '../../../quantity/out-of-range.ts'
import { failed, type Outcome } from '../../common/outcome.ts'
import { Unreadable } from '../../common/stated-fact.ts'

/** Words after which a person knows what is missing: `the pitch of the propeller is not stated`. */
export class Missing extends OutOfRange {}

const sentence = (words: string): string => `${words.replace(/^./, (letter) => letter.toUpperCase())}.`

/** An outcome, where the work may meet a fact that is missing, cannot be read, or is outside what a formula is for. */
export function attempt<T>(work: () => Outcome<T>): Outcome<T> {
  try {
    return work()
  } catch (error) {
    if (error instanceof Missing) return failed({ type: 'unsaid', words: sentence(error.message) })
    if (error instanceof Unreadable) return failed({ type: 'unreadable', words: sentence(error.message) })
    if (error instanceof OutOfRange) return failed({ type: 'impossible', words: sentence(error.message) })
    throw error
  }
}

export function must<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Missing(`${what} is not stated`)
  return value
}
