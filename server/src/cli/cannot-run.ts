import { diskErrorWords } from '../host/disk-error.ts'

/** Why a command could not do its work, in words for whoever called it. */
export class CannotRun extends Error {}

/** Does what the disk may refuse; the words say what could not be done. */
export function attempt<T>(words: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof CannotRun) throw error
    throw new CannotRun(`${words}: ${diskErrorWords(error)}.`)
  }
}
