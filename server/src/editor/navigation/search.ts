import { cancelled } from '../transport/guard.ts'
import { pause } from '../transport/quiet.ts'

/** What a long search goes by. */
export interface Search {
  /** Whether it is still wanted. */
  readonly token?: { readonly isCancellationRequested: boolean }
  /** Told how far it is. */
  readonly progress?: (done: number, of: number) => void
}

/** Milliseconds of work before messages that wait are taken. */
const turn = 10

/** To be called between one file and the next: takes the messages that wait when it is time, and stops a search that is not wanted any more. */
export function breather({ token, progress }: Search): (done: number, of: number) => Promise<void> {
  let since = performance.now()
  return async (done, of) => {
    if (performance.now() - since < turn) return
    progress?.(done, of)
    await pause()
    since = performance.now()
    if (token?.isCancellationRequested) throw cancelled()
  }
}
