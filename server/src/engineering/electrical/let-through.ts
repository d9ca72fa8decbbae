import { OutOfRange } from '../../quantity/out-of-range.ts'

/** Part of a circuit that current may pass in either direction: a conductor, or an overcurrent device between two of them. */
export interface CircuitLink {
  readonly ends: readonly [string, string]
  /** What it lets through without opening, A: the rating of a device, not below zero. A conductor has none. */
  readonly rating?: number
}

/** Links by the places that they join. All sources are one place. */
export interface Circuit {
  readonly links: readonly CircuitLink[]
  readonly joints: readonly Joint[]
  /** Indices of the joints at each place through which something may come to it. */
  readonly at: ReadonlyMap<string, readonly number[]>
  /** The joint that each link is part of; undefined where it joins nothing. */
  readonly jointOf: readonly (number | undefined)[]
  readonly sources: ReadonlySet<string>
}

/** All links between two places. */
interface Joint {
  readonly ends: readonly [string, string]
  /** Indices of links. */
  readonly links: readonly number[]
  /** What all of them let through, A. */
  readonly amps: number
}

export interface LetThrough {
  /** A; infinite where a way has no device in it. */
  readonly amps: number
  /** The devices that limit it, those nearest the place where there is a choice: indices of links. */
  readonly limitedBy: readonly number[]
}

const source = ''
const none: ReadonlySet<number> = new Set()

/** A circuit of links and the places that feed it. A negative rating is OutOfRange.
 * @example circuitOf([{ ends: ['bank', 'bus'], rating: 250 }], ['bank']).joints.length // 1 */
export function circuitOf(links: readonly CircuitLink[], feeding: readonly string[]): Circuit {
  const sources = new Set(feeding)
  const joints: { ends: [string, string]; links: number[]; amps: number }[] = []
  const jointOf: (number | undefined)[] = []
  const found = new Map<string, Map<string, number>>()
  const at = new Map<string, number[]>()
  for (const [i, { ends, rating = 0 }] of links.entries()) {
    if (!(rating >= 0)) throw new OutOfRange(`a rating must not be below zero, not ${rating}`)
    const [one, other] = ends.map((end) => (sources.has(end) ? source : end)).sort() as [string, string]
    if (one === other) {
      jointOf.push(undefined)
      continue
    }
    const from = found.get(one) ?? new Map<string, number>()
    found.set(one, from)
    const amps = links[i]?.rating ?? Number.POSITIVE_INFINITY
    const known = from.get(other)
    jointOf.push(known ?? joints.length)
    const joint = known === undefined ? undefined : joints[known]
    if (joint) {
      joint.links.push(i)
      joint.amps += amps
      continue
    }
    from.set(other, joints.length)
    for (const end of [one, other]) at.get(end)?.push(joints.length) ?? at.set(end, [joints.length])
    joints.push({ ends: [one, other], links: [i], amps })
  }
  return { links, joints, at: feedingIn(joints, at), jointOf, sources }
}

/** Without the joints to what lies behind a place as seen from all sources: nothing comes from there. Dead ends are taken off one after the other; of
 * each its last joint is the one that feeds it. */
function feedingIn(
  joints: readonly Joint[],
  at: ReadonlyMap<string, readonly number[]>,
): ReadonlyMap<string, readonly number[]> {
  const left = new Map([...at].map(([place, all]) => [place, new Set(all)]))
  const ends = [...left].flatMap(([place, all]) => (place !== source && all.size === 1 ? [place] : []))
  for (const end of ends) {
    const [last] = left.get(end) ?? []
    const towards = joints[last ?? -1]?.ends.find((one) => one !== end)
    const behind = towards === undefined ? undefined : left.get(towards)
    if (last === undefined || towards === undefined || !behind?.delete(last)) continue
    if (towards !== source && behind.size === 1) ends.push(towards)
  }
  return new Map([...left].map(([place, all]) => [place, [...all]]))
}

/** A joint on a way, as it is passed from one of its ends. */
interface Step {
  readonly joint: number
  readonly side: 0 | 1
  readonly from: string
}

type MayPass = (joint: number, side: 0 | 1) => boolean

/** The step over a joint from a place, and where it leads. */
function over(
  { joints }: Circuit,
  joint: number,
  from: string,
): { readonly step: Step; readonly to: string } {
  const { ends } = joints[joint] as Joint
  const side = ends[0] === from ? 0 : 1
  return { step: { joint, side, from }, to: ends[1 - side] as string }
}

/** How many steps each place is away from one. */
function levelsFrom(circuit: Circuit, from: string, mayPass: MayPass): ReadonlyMap<string, number> {
  const levels = new Map([[from, 0]])
  for (const [place, level] of levels) {
    if (place === source) continue
    for (const joint of circuit.at.get(place) ?? []) {
      const { step, to } = over(circuit, joint, place)
      if (!levels.has(to) && mayPass(joint, step.side)) levels.set(to, level + 1)
    }
  }
  return levels
}

/** All shortest ways from a place to the sources, each given to `use`, until none is left. */
function eachShortest(
  circuit: Circuit,
  from: string,
  levels: ReadonlyMap<string, number>,
  mayPass: MayPass,
  use: (way: readonly Step[]) => void,
): void {
  const next = new Map<string, number>()
  const way: Step[] = []
  for (let place = from; ; ) {
    if (place === source) {
      use(way)
      const used = way.findIndex(({ joint, side }) => !mayPass(joint, side))
      place = way[used]?.from ?? from
      way.length = Math.max(used, 0)
      continue
    }
    const joint = circuit.at.get(place)?.[next.get(place) ?? 0]
    if (joint === undefined) {
      const last = way.pop()
      if (!last) return
      place = last.from
      next.set(place, (next.get(place) ?? 0) + 1)
      continue
    }
    const { step, to } = over(circuit, joint, place)
    if (levels.get(to) === (levels.get(place) ?? 0) + 1 && mayPass(joint, step.side)) {
      way.push(step)
      place = to
    } else next.set(place, (next.get(place) ?? 0) + 1)
  }
}

/** The largest current (A) that can flow on and on from the sources to a place without any overcurrent device opening, some links left out: what a
 * conductor that begins there has to bear in a fault of high resistance. Devices side by side add up, of those in a row the smallest counts: it is
 * the smallest sum of ratings whose opening parts the place from all sources. Source: max-flow min-cut theorem, Ford and Fulkerson 1956, found by
 * shortest augmenting paths, Dinitz 1970; they are followed from the place, as current may pass each link either way.
 * @example letThrough(circuitOf([{ ends: ['bank', 'bus'], rating: 250 }], ['bank']), 'bus').amps // 250 */
export function letThrough(circuit: Circuit, to: string, without = none): LetThrough {
  const { links, joints, jointOf, sources } = circuit
  if (sources.has(to)) return { amps: Number.POSITIVE_INFINITY, limitedBy: [] }
  const lessened = new Set([...without].flatMap((link) => jointOf[link] ?? []))
  const linksIn = (joint: number) => joints[joint]?.links.filter((link) => !without.has(link)) ?? []
  /** What each joint still lets through along it, and against it. */
  const left = new Map<number, [number, number]>()
  const leftOf = (joint: number): [number, number] => {
    const known = left.get(joint)
    if (known) return known
    const all = lessened.has(joint)
      ? linksIn(joint).reduce((sum, link) => sum + (links[link]?.rating ?? Number.POSITIVE_INFINITY), 0)
      : (joints[joint]?.amps ?? 0)
    const both: [number, number] = [all, all]
    left.set(joint, both)
    return both
  }
  const mayPass = (joint: number, side: 0 | 1) => leftOf(joint)[side] > 0
  let amps = 0
  for (;;) {
    const levels = levelsFrom(circuit, to, mayPass)
    if (!levels.has(source)) {
      const parting = [...left.keys()].filter((joint) => {
        const [one, other] = joints[joint]?.ends ?? []
        return levels.has(one ?? '') !== levels.has(other ?? '')
      })
      return { amps, limitedBy: parting.flatMap(linksIn).sort((a, b) => a - b) }
    }
    eachShortest(circuit, to, levels, mayPass, (way) => {
      const more = Math.min(...way.map(({ joint, side }) => leftOf(joint)[side]))
      for (const { joint, side } of way) {
        const both = leftOf(joint)
        both[side] -= more
        both[side === 0 ? 1 : 0] += more
      }
      amps += more
    })
    if (!Number.isFinite(amps)) return { amps: Number.POSITIVE_INFINITY, limitedBy: [] }
  }
}
