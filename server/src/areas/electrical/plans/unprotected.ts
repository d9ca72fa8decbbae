import { getOrInsert } from '../../../common/get-or-insert.ts'
import type { Island, Place } from './dc-topology.ts'

/** A conductor that a battery feeds before any fuse or breaker. */
export interface Unprotected {
  /** Length of conductor from the battery to its far end, m. Conductors of unknown length are not in it. */
  readonly reach: number
  /** Its end away from the battery. */
  readonly far: Place
  /** Whether only fuses and breakers lie behind it. */
  readonly isLead: boolean
}

export interface UnprotectedPart {
  readonly conductors: ReadonlyMap<number, Unprotected>
  /** The places that are reached from each. */
  readonly onward: ReadonlyMap<Place, readonly Place[]>
}

interface Way {
  readonly to: Place
  /** m. */
  readonly length: number
}

/** What batteries feed of an island before any fuse or breaker, its conductors by their index. It is walked from the batteries through conductors and
 * switches. */
export function unprotectedIn({ conductors, devices, batteries, sinks }: Island): UnprotectedPart {
  const ways = new Map<Place, Way[]>()
  const add = (from: Place, to: Place, length: number) =>
    void getOrInsert(ways, from, (): Way[] => []).push({ to, length })
  const fuseAt = new Set<Place>()
  for (const { ends, length = 0 } of conductors) {
    add(ends[0], ends[1], length)
    add(ends[1], ends[0], length)
  }
  for (const { kind, ends } of devices)
    for (const end of ends)
      if (kind === 'protection') fuseAt.add(end)
      else add(end, end === ends[0] ? ends[1] : ends[0], 0)
  const sources = new Set(batteries.map(({ place }) => place))
  const reached = new Map<Place, { readonly by?: Place; readonly length: number }>(
    [...sources].map((place) => [place, { length: 0 }]),
  )
  for (const [place, { length }] of reached)
    for (const way of ways.get(place) ?? [])
      if (!reached.has(way.to)) reached.set(way.to, { by: place, length: length + way.length })
  const order = [...reached.keys()]
  const rank = new Map(order.map((place, i) => [place, i]))
  const onward = new Map<Place, Place[]>()
  for (const [place, { by }] of reached)
    if (by !== undefined) getOrInsert(onward, by, (): Place[] => []).push(place)
  // Whatever is fed through a place, or ends there, needs a fuse before it, unless that place is a fuse.
  const needsFuse = new Set(sinks.map(({ place }) => place))
  for (const place of order.toReversed()) {
    if (sources.has(place)) continue
    if (!onward.has(place) && !fuseAt.has(place)) needsFuse.add(place)
    const by = reached.get(place)?.by
    if (by !== undefined && needsFuse.has(place)) needsFuse.add(by)
  }
  const found = new Map<number, Unprotected>()
  for (const [i, { ends, length = 0 }] of conductors.entries()) {
    const [one, other] = ends.map((end) => rank.get(end))
    if (one === undefined || other === undefined) continue
    const [near, far] = one < other ? ends : [ends[1], ends[0]]
    found.set(i, {
      reach: (reached.get(near)?.length ?? 0) + length,
      far,
      isLead: !sources.has(far) && !needsFuse.has(far),
    })
  }
  return { conductors: found, onward }
}
