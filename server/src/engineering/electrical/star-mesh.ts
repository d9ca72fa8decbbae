import { getOrInsert } from '../../common/get-or-insert.ts'
import { whole } from '../guard.ts'

/** A node that is taken out of a network, and the conductances that change by it, as indices of slots. */
interface Step {
  readonly node: number
  readonly others: Int32Array
  /** From the node to each of the others. */
  readonly spokes: Int32Array
  /** Between each pair of the others, in the order (0, 1), (0, 2), … (1, 2), … */
  readonly sides: Int32Array
}

/** The order in which the nodes of a network are taken out of it. */
export interface Elimination {
  readonly nodes: number
  readonly steps: readonly Step[]
  /** The slot of each edge. */
  readonly edges: readonly number[]
  readonly slots: number
}

/** A network that is ready to be solved for any currents that are fed into it. */
export interface Reduced {
  readonly elimination: Elimination
  /** The sum of the conductances of each node when it was taken out, S; 0 for the last node of an island. */
  readonly pivots: Float64Array
  /** What part of the current of each node goes to each of its neighbours. */
  readonly shares: readonly Float64Array[]
}

/** In which order nodes are taken out: always the one with the fewest neighbours, so that trees, chains and dead ends leave no new edges.
 * `edges` are pairs of nodes, numbered from 0, else OutOfRange; which values they will have does not matter. Source: minimum degree ordering.
 * @example eliminationOf(3, [[0, 1], [1, 2]]).steps.length // 3 */
export function eliminationOf(nodes: number, edges: readonly (readonly [number, number])[]): Elimination {
  const slots = new Map<number, number>()
  const slotOf = (a: number, b: number) =>
    getOrInsert(slots, Math.min(a, b) * nodes + Math.max(a, b), () => slots.size)
  const around = Array.from({ length: nodes }, () => new Set<number>())
  const join = (a: number, b: number) => {
    around[a]?.add(b)
    around[b]?.add(a)
  }
  const slotsOfEdges = edges.map(([a, b]) => {
    whole('node', a, 0, nodes - 1)
    whole('node', b, 0, nodes - 1)
    if (a !== b) join(a, b)
    return slotOf(a, b)
  })
  const steps: Step[] = []
  const queue = byNeighbours(around)
  for (let node = queue.next(); node !== undefined; node = queue.next()) {
    const others = [...(around[node] ?? [])]
    const sides: number[] = []
    for (const [i, a] of others.entries()) {
      around[a]?.delete(node)
      for (let j = i + 1; j < others.length; j++) {
        const b = others[j] ?? a
        join(a, b)
        sides.push(slotOf(a, b))
      }
    }
    others.forEach(queue.changed)
    steps.push({
      node,
      others: Int32Array.from(others),
      spokes: Int32Array.from(others, (other) => slotOf(node, other)),
      sides: Int32Array.from(sides),
    })
  }
  return { nodes, steps, edges: slotsOfEdges, slots: slots.size }
}

/** Gives the nodes one by one, each time one of those with the fewest neighbours. */
function byNeighbours(around: readonly ReadonlySet<number>[]) {
  const degree = around.map((others) => others.size)
  const waiting: Set<number>[] = []
  const put = (node: number) => {
    const count = around[node]?.size ?? 0
    degree[node] = count
    for (let i = waiting.length; i <= count; i++) waiting.push(new Set())
    waiting[count]?.add(node)
  }
  for (const node of around.keys()) put(node)
  return {
    next(): number | undefined {
      for (const nodes of waiting)
        for (const node of nodes) {
          nodes.delete(node)
          return node
        }
      return undefined
    },
    changed(this: void, node: number): void {
      waiting[degree[node] ?? 0]?.delete(node)
      put(node)
    },
  }
}

/** Takes the nodes out one after the other: a node with conductances g₁, g₂ … to its neighbours is the same as conductances gᵢgⱼ / Σg between
 * each two of them. `conductances` (S) are those of the edges; they may be negative, as that of a load of constant power for small changes.
 * Undefined where the network is not stable with them: its conductance matrix is not positive definite, so a pivot is not above zero. Where all are
 * positive, nothing is ever subtracted, so each result is good to a few bits however far apart the resistances are. Sources: star-mesh transform,
 * Rosen 1924; without subtractions, Grassmann, Taksar and Heyman 1985; the pivots are those of LDLᵀ, whose signs are those of the eigenvalues
 * (Sylvester).
 * @example reduce(eliminationOf(2, [[0, 1]]), [5]).pivots[0] // 5 */
export function reduce(elimination: Elimination, conductances: readonly number[]): Reduced | undefined {
  const { edges, slots, steps } = elimination
  const value = new Float64Array(slots)
  const size = new Float64Array(slots)
  for (const [edge, slot] of edges.entries()) {
    value[slot] = at(value, slot) + at(conductances, edge)
    size[slot] = at(size, slot) + Math.abs(at(conductances, edge))
  }
  const pivots = new Float64Array(steps.length)
  const shares: Float64Array[] = []
  for (const [k, { spokes, sides }] of steps.entries()) {
    let all = 0
    let sizes = 0
    for (const slot of spokes) {
      all += at(value, slot)
      sizes += at(size, slot)
    }
    if (spokes.length > 0 && !(all > lost * sizes)) return undefined
    const share = new Float64Array(spokes.length)
    for (let i = 0; i < spokes.length; i++) share[i] = at(value, at(spokes, i)) / all
    let side = 0
    for (let i = 0; i < spokes.length; i++)
      for (let j = i + 1; j < spokes.length; j++) {
        const slot = at(sides, side++)
        const more = at(value, at(spokes, i)) * at(share, j)
        value[slot] = at(value, slot) + more
        size[slot] = at(size, slot) + Math.abs(more)
      }
    pivots[k] = all
    shares.push(share)
  }
  return { elimination, pivots, shares }
}

/** What part of a sum of conductances of both signs is lost by rounding. */
const lost = 1e-14

const at = (numbers: ArrayLike<number>, i: number): number => numbers[i] ?? 0

/** The voltage of each node (V) with these currents (A) fed into the nodes. In each island one node is at 0 V, and takes out what is fed in at the
 * others. Source: forward and back substitution.
 * @example voltagesOf(reduce(eliminationOf(2, [[0, 1]]), [5]), [10, -10]) // [2, 0] */
export function voltagesOf({ elimination, pivots, shares }: Reduced, fed: readonly number[]): number[] {
  const { nodes, steps } = elimination
  const currents = Float64Array.from(fed)
  for (const [k, { node, others }] of steps.entries()) {
    const current = at(currents, node)
    if (current === 0) continue
    const share = shares[k] ?? none
    for (let i = 0; i < others.length; i++) {
      const other = at(others, i)
      currents[other] = at(currents, other) + current * at(share, i)
    }
  }
  const voltages = new Array<number>(nodes).fill(0)
  for (let k = steps.length - 1; k >= 0; k--) {
    const { node = 0, others = none } = steps[k] ?? {}
    if (others.length === 0) continue
    const share = shares[k] ?? none
    let voltage = at(currents, node) / at(pivots, k)
    for (let i = 0; i < others.length; i++) voltage += at(share, i) * at(voltages, at(others, i))
    voltages[node] = voltage
  }
  return voltages
}

const none = new Float64Array(0)
