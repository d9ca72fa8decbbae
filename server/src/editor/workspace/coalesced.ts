interface Coalesced<T> {
  readonly run: () => Promise<T>
  /** The last run that was asked for, as long as it has not ended. */
  readonly underWay: () => Promise<T> | undefined
}

/** Work that runs once at a time. Whoever asks while it runs shares the next run, since the one that runs may have missed what they know. */
export function coalesced<T>(work: () => Promise<T>): Coalesced<T> {
  let running: Promise<T> | undefined
  let next: Promise<T> | undefined
  const begin = (): Promise<T> => {
    next = undefined
    const run = work()
    running = run
    const end = () => {
      if (running === run) running = undefined
    }
    run.then(end, end)
    return run
  }
  const run = (): Promise<T> => {
    if (!running) return begin()
    next ??= running.then(begin, begin)
    return next
  }
  return { run, underWay: () => next ?? running }
}
