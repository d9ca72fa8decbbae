export interface Spread {
  readonly p50: number
  readonly p95: number
}

/** The middle of the samples, and what 95 of 100 of them stay within (nearest rank). */
export function spreadOf(samples: readonly number[]): Spread {
  const sorted = samples.toSorted((a, b) => a - b)
  const rank = (share: number) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN
  return { p50: rank(0.5), p95: rank(0.95) }
}

/** Milliseconds that some work takes. */
export async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now()
  await work()
  return performance.now() - start
}

/** Does it many times, one after the other, and leaves the first ones out: the engine is still warming up then. */
export async function sampled(
  { times, warmUp }: { readonly times: number; readonly warmUp: number },
  once: (turn: number) => Promise<number>,
): Promise<Spread> {
  const samples: number[] = []
  for (let turn = 0; turn < warmUp + times; turn++) samples.push(await once(turn))
  return spreadOf(samples.slice(warmUp))
}
