/** Numbers that look random and are the same for the same seed (mulberry32). */
export interface Random {
  /** From 0 up to, but without, 1. */
  readonly next: () => number
  /** A whole number from 0 up to, but without, `n`. */
  readonly below: (n: number) => number
  readonly pick: <T>(of: readonly T[]) => T
  /** True so often, of one. */
  readonly chance: (share: number) => boolean
}

export function randomFrom(seed: number): Random {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  const below = (n: number): number => Math.floor(next() * n)
  const pick = <T>(of: readonly T[]): T => {
    if (of.length === 0) throw new RangeError('nothing to pick from')
    return of[below(of.length)] as T
  }
  return { next, below, pick, chance: (share) => next() < share }
}
