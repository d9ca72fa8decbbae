import { type Branch, type OpenIsland, openIsland } from './dc-island.ts'

/** Two places with a resistance between them, in Ω, and a voltage in it, in V, that drives current from the first to the second. 0 Ω, without a
 * voltage, makes them one. */
export interface Wire {
  readonly ends: readonly [string, string]
  readonly resistance: number
  readonly emf: number
}

/** Places as nodes, those that 0 Ω joins as one node, by islands. */
export interface Wiring {
  /** All places, those of `others` too. */
  readonly places: ReadonlyMap<string, number>
  /** For each place the lowest of those that are one node with it. */
  readonly joint: readonly number[]
  readonly islands: readonly OpenIsland[]
  /** Where a place is: the island, and the number of its node there. Undefined where no resistance leads to it. */
  readonly at: (place: string) => { readonly island: number; readonly node: number } | undefined
}

function numberIn<K>(numbers: Map<K, number>, of: K): number {
  const number = numbers.get(of) ?? numbers.size
  numbers.set(of, number)
  return number
}

/** For each number the lowest of those that are joined with it, over any ways. Source: disjoint-set forest. */
function joined(count: number, pairs: readonly (readonly [number, number])[]): number[] {
  const below = Array.from({ length: count }, (_, i) => i)
  const lowest = (of: number): number => {
    let found = of
    for (let next = below[found] ?? found; next !== found; next = below[found] ?? found) {
      below[found] = below[next] ?? next
      found = next
    }
    return found
  }
  for (const [a, b] of pairs) {
    const [one, other] = [lowest(a), lowest(b)]
    below[Math.max(one, other)] = Math.min(one, other)
  }
  return below.map((_, i) => lowest(i))
}

/** What hangs together in a network. The first node of an island is the first end of its first wire.
 * @example wiringOf([{ ends: ['a', 'b'], resistance: 1, emf: 12 }], []).islands.length // 1 */
export function wiringOf(wires: readonly Wire[], others: readonly string[]): Wiring {
  const places = new Map<string, number>()
  const ends = wires.map(({ ends: [a, b] }) => [numberIn(places, a), numberIn(places, b)] as const)
  for (const place of others) numberIn(places, place)
  const joint = joined(
    places.size,
    ends.filter((_, i) => wires[i]?.resistance === 0),
  )
  const together = joined(places.size, [...ends, ...joint.entries()])
  const parts = new Map<number, { numbers: Map<number, number>; branches: Branch[] }>()
  for (const [i, { resistance, emf }] of wires.entries()) {
    const [a, b] = (ends[i] ?? []).map((place) => joint[place] ?? place) as [number, number]
    if (a === b) continue
    const part = parts.get(together[a] ?? a) ?? { numbers: new Map<number, number>(), branches: [] }
    parts.set(together[a] ?? a, part)
    const [from, to] = [numberIn(part.numbers, a), numberIn(part.numbers, b)]
    part.branches.push({ from, to, emf, conductance: 1 / resistance })
  }
  const all = [...parts.values()]
  const islandOf = new Map([...parts.keys()].map((part, i) => [part, i]))
  return {
    places,
    joint,
    islands: all.map(({ numbers, branches }) => openIsland({ nodes: numbers.size, branches })),
    at: (place) => {
      const number = places.get(place)
      if (number === undefined) return undefined
      const island = islandOf.get(together[number] ?? number)
      const node = all[island ?? -1]?.numbers.get(joint[number] ?? number)
      return island === undefined || node === undefined ? undefined : { island, node }
    },
  }
}
