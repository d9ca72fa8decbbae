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
  /** Indices of joints. */
  readonly at: ReadonlyMap<string, readonly number[]>
  readonly sources: ReadonlySet<string>
}

/** All links between two places. */
interface Joint {
  readonly ends: readonly [string, string]
  /** Indices of links. */
  readonly links: readonly number[]
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
  const joints: { ends: [string, string]; links: number[] }[] = []
  const known = new Map<string, Map<string, number>>()
  const at = new Map<string, number[]>()
  for (const [i, { ends, rating = 0 }] of links.entries()) {
    if (!(rating >= 0)) throw new OutOfRange(`a rating must not be below zero, not ${rating}`)
    const [one, other] = ends.map((end) => (sources.has(end) ? source : end)).sort() as [string, string]
    if (one === other) continue
    const from = known.get(one) ?? new Map<string, number>()
    known.set(one, from)
    const joint = from.get(other)
    if (joint !== undefined) {
      joints[joint]?.links.push(i)
      continue
    }
    from.set(other, joints.length)
    for (const end of [one, other]) at.get(end)?.push(joints.length) ?? at.set(end, [joints.length])
    joints.push({ ends: [one, other], links: [i] })
  }
  return { links, joints, at, sources }
}

interface Step {
  readonly joint: number
  readonly side: 0 | 1
  readonly from: string
}

/** The shortest ways from a place until a source is reached, as the step that leads to each place. */
function search(
  { joints, at }: Circuit,
  from: string,
  mayPass: (joint: number, side: 0 | 1) => boolean,
): ReadonlyMap<string, Step | undefined> {
  const steps = new Map<string, Step | undefined>([[from, undefined]])
  for (const [place] of steps)
    for (const joint of at.get(place) ?? []) {
      const { ends } = joints[joint] as Joint
      const side = ends[0] === place ? 0 : 1
      const other = ends[1 - side] as string
      if (steps.has(other) || !mayPass(joint, side)) continue
      steps.set(other, { joint, side, from: place })
      if (other === source) return steps
    }
  return steps
}

/** The largest current (A) that can flow on and on from the sources to a place without any overcurrent device opening, some links left out: what a
 * conductor that begins there has to bear in a fault of high resistance. Devices side by side add up, of those in a row the smallest counts: it is
 * the smallest sum of ratings whose opening parts the place from all sources. Source: max-flow min-cut theorem, Ford and Fulkerson 1956, found by
 * shortest augmenting paths, Edmonds and Karp 1972; they are followed from the place, as current may pass each link either way.
 * @example letThrough(circuitOf([{ ends: ['bank', 'bus'], rating: 250 }], ['bank']), 'bus').amps // 250 */
export function letThrough(circuit: Circuit, to: string, without = none): LetThrough {
  const { links, joints, sources } = circuit
  if (sources.has(to)) return { amps: Number.POSITIVE_INFINITY, limitedBy: [] }
  const linksIn = (joint: number) => joints[joint]?.links.filter((link) => !without.has(link)) ?? []
  /** What each joint still lets through along it, and against it. */
  const left = new Map<number, [number, number]>()
  const leftOf = (joint: number): [number, number] => {
    const known = left.get(joint)
    if (known) return known
    const all = linksIn(joint).reduce(
      (sum, link) => sum + (links[link]?.rating ?? Number.POSITIVE_INFINITY),
      0,
    )
    const both: [number, number] = [all, all]
    left.set(joint, both)
    return both
  }
  const mayPass = (joint: number, side: 0 | 1) => leftOf(joint)[side] > 0
  let amps = 0
  for (;;) {
    const steps = search(circuit, to, mayPass)
    if (!steps.has(source)) {
      const parting = [...left.keys()].filter((joint) => {
        const [one, other] = joints[joint]?.ends ?? []
        return steps.has(one ?? '') !== steps.has(other ?? '')
      })
      return { amps, limitedBy: parting.flatMap(linksIn).sort((a, b) => a - b) }
    }
    const way: Step[] = []
    for (let step = steps.get(source); step; step = steps.get(step.from)) way.push(step)
    const more = Math.min(...way.map(({ joint, side }) => leftOf(joint)[side]))
    if (!Number.isFinite(more)) return { amps: more, limitedBy: [] }
    for (const { joint, side } of way) {
      const both = leftOf(joint)
      both[side] -= more
      both[side === 0 ? 1 : 0] += more
    }
    amps += more
  }
}
