import { getOrInsert } from '../../../common/get-or-insert.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup } from '../../../store/lookup.ts'
import { type Island, type Place, topologyOfFile } from './dc-topology.ts'

/** A part of a network as a one-line diagram has it: both poles as one. */
export interface OneLinePart {
  readonly part: BlockId
  /** Index of the part before it on the way from the first source; undefined of that source. */
  readonly before: number | undefined
  /** Of a cable or device that ends where another way has led before: index of the part there. It closes a ring. */
  readonly closesAt?: number
  /** Of a piece of cable, m; absent where it is not known. */
  readonly length?: number
}

interface Edge {
  readonly part: BlockId
  readonly ends: readonly [Place, Place]
  readonly length?: number
}

const edgesOf = ({ conductors, devices }: Island): readonly Edge[] => [
  ...devices.map(({ device, ends }) => ({ part: device, ends })),
  ...conductors.map(({ cable, ends, length }) => ({
    part: cable,
    ends,
    ...(length !== undefined && { length }),
  })),
]

interface Visit {
  readonly edges: readonly Edge[]
  /** Index of what stands for the place. */
  readonly at: number
  next: number
}

/** The parts of a network in the order in which they are met from its first battery; of one that has none, from a converter that feeds it. */
function oneLineOf(island: Island): readonly OneLinePart[] {
  const { batteries, feeders, sinks, busbars } = island
  const partsAt = new Map<Place, Set<BlockId>>()
  const put = (place: Place, part: BlockId) => getOrInsert(partsAt, place, () => new Set<BlockId>()).add(part)
  for (const { battery, place } of batteries) put(place, battery)
  for (const { part, place } of [...busbars, ...sinks]) put(place, part)
  for (const { feeder, place } of feeders) put(place, feeder)
  const edgesAt = new Map<Place, Edge[]>()
  for (const edge of edgesOf(island))
    for (const place of new Set(edge.ends)) getOrInsert(edgesAt, place, (): Edge[] => []).push(edge)
  const start = batteries[0]?.place ?? feeders[0]?.place
  if (start === undefined) return []
  const all: OneLinePart[] = []
  const used = new Set<Edge>()
  const met = new Map<Place, number>()
  const enter = (place: Place, before: number | undefined): Visit => {
    let at = before
    for (const part of partsAt.get(place) ?? []) {
      all.push({ part, before: at })
      if (at === before) at = all.length - 1
    }
    met.set(place, at ?? 0)
    return { edges: edgesAt.get(place) ?? [], at: at ?? 0, next: 0 }
  }
  const way = [{ place: start, visit: enter(start, undefined) }]
  for (let here = way.at(-1); here; here = way.at(-1)) {
    const { place, visit } = here
    const edge = visit.edges[visit.next++]
    if (!edge) way.pop()
    if (!edge || used.has(edge)) continue
    used.add(edge)
    const { part, length } = edge
    const other = edge.ends[0] === place ? edge.ends[1] : edge.ends[0]
    const closesAt = met.get(other)
    all.push({
      part,
      before: visit.at,
      ...(closesAt !== undefined && { closesAt }),
      ...(length !== undefined && { length }),
    })
    if (closesAt === undefined) way.push({ place: other, visit: enter(other, all.length - 1) })
  }
  return all
}

/** The networks of a file that have a source, each from that source on. */
export const oneLines = (file: FileLookup): readonly (readonly OneLinePart[])[] =>
  [...new Set(file.ofFile(topologyOfFile).islands.values())]
    .map(oneLineOf)
    .filter((parts) => parts.length > 0)
