import { RAL } from 'vscode-languageserver'

/** Lets the messages that wait be taken. */
export const pause = (): Promise<void> => new Promise((done) => void RAL().timer.setImmediate(() => done()))

/** A bell that does the work once it has been quiet: one message is taken between two looks, so a burst of them is worked off first. */
export function whenQuiet(work: () => void): () => void {
  let rung = false
  let looking = false
  const look = () => {
    if (rung) {
      rung = false
      RAL().timer.setImmediate(look)
    } else {
      looking = false
      work()
    }
  }
  return () => {
    rung = true
    if (looking) return
    looking = true
    RAL().timer.setImmediate(look)
  }
}
