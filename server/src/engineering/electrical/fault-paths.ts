import { getOrInsert } from '../../common/get-or-insert.ts'

/** Something that a fault current flows through between two places. */
export interface PathLink {
  readonly ends: readonly [string, string]
  /** Ω, ≥ 0. */
  readonly resistance: number
}

interface Way {
  readonly link: number
  readonly to: string
  readonly resistance: number
}

const waysOf = (links: readonly PathLink[]): ReadonlyMap<string, readonly Way[]> => {
  const ways = new Map<string, Way[]>()
  for (const [link, { ends, resistance }] of links.entries())
    for (const [from, to] of [ends, ends.toReversed()] as (readonly [string, string])[])
      getOrInsert(ways, from, (): Way[] => []).push({ link, to, resistance })
  return ways
}

/** The resistance of the shortest way from a place to each that links lead to, Ω, and the link by which it comes there. Without others beside it, a
 * way carries no less than this lets through: links side by side only lower the resistance (Rayleigh's monotonicity). Source: shortest paths with a
 * queue (Bellman and Ford).
 * @example pathsFrom('a', [{ ends: ['a', 'b'], resistance: 1 }, { ends: ['b', 'c'], resistance: 2 }]).get('c')?.resistance // 3 */
export function pathsFrom(
  start: string,
  links: readonly PathLink[],
): ReadonlyMap<
  string,
  { readonly resistance: number; readonly by: number | undefined; readonly from: string }
> {
  const ways = waysOf(links)
  const found = new Map<string, { resistance: number; by: number | undefined; from: string }>([
    [start, { resistance: 0, by: undefined, from: start }],
  ])
  const waiting = new Set([start])
  for (const place of waiting) {
    waiting.delete(place)
    const here = found.get(place)?.resistance ?? 0
    for (const { link, to, resistance } of ways.get(place) ?? []) {
      const known = found.get(to)
      if (known && known.resistance <= here + resistance) continue
      found.set(to, { resistance: here + resistance, by: link, from: place })
      waiting.add(to)
    }
  }
  return found
}
