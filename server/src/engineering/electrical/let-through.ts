import { OutOfRange } from '../../quantity/out-of-range.ts'

/** Part of a circuit that current may pass in either direction: a conductor, or an overcurrent device between two of them. */
export interface CircuitLink {
  readonly ends: readonly [string, string]
  /** What it lets through without opening, A: the rating of a device, not below zero. A conductor has none. */
  readonly rating?: number
}

export interface LetThrough {
  /** A; infinite where a way has no device in it. */
  readonly amps: number
  /** The devices that limit it: indices of links. */
  readonly limitedBy: readonly number[]
}

/** The largest current (A) that can flow on and on from `sources` to the place `to` without any overcurrent device opening: what a conductor that
 * begins there has to bear in a fault of high resistance. Devices side by side add up, of those in a row the smallest counts: it is the smallest
 * sum of ratings whose opening parts the place from all sources. Source: max-flow min-cut theorem, Ford and Fulkerson 1956, found by shortest
 * augmenting paths, Edmonds and Karp 1972. A negative rating is OutOfRange.
 * @example letThrough([{ ends: ['bank', 'bus'], rating: 250 }, { ends: ['bus', 'feed'] }], ['bank'], 'feed').amps // 250 */
export function letThrough(
  links: readonly CircuitLink[],
  sources: readonly string[],
  to: string,
): LetThrough {
  const at = new Map<string, number[]>()
  const add = (end: string, link: number) => void (at.get(end)?.push(link) ?? at.set(end, [link]))
  for (const [i, { ends, rating = 0 }] of links.entries()) {
    if (!(rating >= 0)) throw new OutOfRange(`a rating must not be below zero, not ${rating}`)
    for (const end of new Set(ends)) add(end, i)
  }
  // Along the link, and against it.
  const left = links.map(({ rating = Number.POSITIVE_INFINITY }) => [rating, rating] as [number, number])

  /** The shortest way with something left on each link, as the link that leads to each place. */
  const reach = (): ReadonlyMap<string, Step | undefined> => {
    const steps = new Map<string, Step | undefined>(sources.map((source) => [source, undefined]))
    for (const [place] of steps) {
      if (place === to) break
      for (const link of at.get(place) ?? []) {
        const { ends } = links[link] as CircuitLink
        const side = ends[0] === place ? 0 : 1
        const other = ends[1 - side] as string
        if (!steps.has(other) && (left[link]?.[side] ?? 0) > 0) steps.set(other, { link, side, from: place })
      }
    }
    return steps
  }

  let amps = 0
  for (;;) {
    const steps = reach()
    if (!steps.has(to)) return { amps, limitedBy: parting(links, steps) }
    const way: Step[] = []
    for (let step = steps.get(to); step; step = steps.get(step.from)) way.push(step)
    const more = Math.min(...way.map(({ link, side }) => left[link]?.[side] ?? 0))
    if (!Number.isFinite(more)) return { amps: more, limitedBy: [] }
    for (const { link, side } of way) {
      const both = left[link] as [number, number]
      both[side] -= more
      both[1 - side] = (both[1 - side] ?? 0) + more
    }
    amps += more
  }
}

interface Step {
  readonly link: number
  readonly side: 0 | 1
  readonly from: string
}

/** The links from what is reached to what is not. */
const parting = (links: readonly CircuitLink[], reached: ReadonlyMap<string, unknown>): readonly number[] =>
  links.flatMap(({ ends: [a, b] }, i) => (reached.has(a) !== reached.has(b) ? [i] : []))
