import { OutOfRange } from '../../quantity/out-of-range.ts'
import { type Elimination, eliminationOf, type Reduced, reduce, voltagesOf } from './star-mesh.ts'

/** A resistance between two nodes, with a voltage in it that drives current from `from` to `to`. */
export interface Branch {
  readonly from: number
  readonly to: number
  /** S, above zero. */
  readonly conductance: number
  /** V */
  readonly emf: number
}

/** What takes power (W) and current (A) from node `from` and returns the current at node `to`. */
export interface Port {
  readonly from: number
  readonly to: number
  readonly power: number
  readonly current: number
}

/** Nodes, numbered from 0, that branches join. */
export interface Island {
  readonly nodes: number
  readonly branches: readonly Branch[]
}

export type OperatingPoint =
  | { readonly stable: true; readonly voltages: readonly number[] }
  /** The ports that bring the voltage down, and what part of all that is asked for can be supplied. */
  | { readonly stable: false; readonly ports: readonly number[]; readonly share: number }

const at = (numbers: readonly number[], i: number): number => numbers[i] ?? 0

/** Voltage from one node to another, V.
 * @example voltageBetween([12, 2], { from: 0, to: 1 }) // 10 */
export const voltageBetween = (
  voltages: readonly number[],
  { from, to }: { readonly from: number; readonly to: number },
): number => at(voltages, from) - at(voltages, to)

/** The current in a branch, from `from` to `to`, A. Source: Ohm's law.
 * @example branchCurrent([12, 2], { from: 0, to: 1, conductance: 3, emf: 0 }) // 30 */
export const branchCurrent = (voltages: readonly number[], branch: Branch): number =>
  (voltageBetween(voltages, branch) + branch.emf) * branch.conductance

/** What a port takes at a voltage, A; at 0 V its constant current alone.
 * @example portCurrent({ from: 0, to: 1, power: 500, current: 2 }, 50) // 12 */
export const portCurrent = ({ power, current }: Port, voltage: number): number =>
  (power === 0 ? 0 : power / voltage) + current

/** What flows into each node from the branches less what the ports take, A: zero everywhere once solved. Source: Kirchhoff's current law. */
function leftOver(island: Island, voltages: readonly number[], ports: readonly Port[]): number[] {
  const left = new Array<number>(island.nodes).fill(0)
  const move = (from: number, to: number, amps: number) => {
    left[from] = at(left, from) - amps
    left[to] = at(left, to) + amps
  }
  for (const branch of island.branches) move(branch.from, branch.to, branchCurrent(voltages, branch))
  for (const port of ports) move(port.from, port.to, portCurrent(port, voltageBetween(voltages, port)))
  return left
}

const sum = (a: readonly number[], b: readonly number[]): number[] => a.map((value, i) => value + at(b, i))

/** Voltages that come nearer by one step, from the currents that are left over. */
const corrected = (
  island: Island,
  reduced: Reduced,
  voltages: readonly number[],
  ports: readonly Port[],
): number[] => sum(voltages, voltagesOf(reduced, leftOver(island, voltages, ports)))

/** An island without loads, ready to be solved. Its conductances are all above zero, so there is always a result. */
export interface OpenIsland extends Island {
  readonly reduced: Reduced
  /** V, with nothing connected. */
  readonly voltages: readonly number[]
  /** The highest voltage of a source, V. */
  readonly highest: number
}

/** The voltages of an island with no load, as far as its sources drive currents between them. Source: nodal analysis.
 * @example openIsland({ nodes: 2, branches: [{ from: 0, to: 1, conductance: 10, emf: 12 }] }).voltages // [-12, 0] */
export function openIsland(island: Island): OpenIsland {
  const elimination = eliminationOf(
    island.nodes,
    island.branches.map(({ from, to }) => [from, to]),
  )
  const reduced = reduce(
    elimination,
    island.branches.map(({ conductance }) => conductance),
  )
  if (!reduced) throw new OutOfRange('each conductance must be above zero')
  const first = corrected(island, reduced, new Array<number>(island.nodes).fill(0), [])
  const highest = island.branches.reduce((most, { emf }) => Math.max(most, Math.abs(emf)), 0)
  return { ...island, highest, reduced, voltages: corrected(island, reduced, first, []) }
}

/** The voltage and the resistance between two nodes of an island, V and Ω: what is connected there sees a source with these. Source: Thévenin's
 * theorem.
 * @example seenFrom(openIsland({ nodes: 2, branches: [{ from: 0, to: 1, conductance: 10, emf: 12 }] }), { from: 1, to: 0 }).resistance // ≈ 0.1 */
export function seenFrom(
  island: OpenIsland,
  nodes: { readonly from: number; readonly to: number },
): { readonly voltage: number; readonly resistance: number } {
  const fed = new Array<number>(island.nodes).fill(0)
  fed[nodes.to] = -1
  fed[nodes.from] = at(fed, nodes.from) + 1
  return {
    voltage: voltageBetween(island.voltages, nodes),
    resistance: voltageBetween(voltagesOf(island.reduced, fed), nodes),
  }
}

/** A port that takes from the island, or whose current follows from its voltage, must have the voltage that it has with no load, not the opposite. */
const holdsUp = (ports: readonly Port[], open: readonly number[], voltages: readonly number[]): boolean =>
  ports.every(
    (port) =>
      (port.power === 0 && port.current <= 0) ||
      voltageBetween(voltages, port) * Math.sign(voltageBetween(open, port)) > 0,
  )

/** What feeds in and takes nothing. */
const feeds = ({ power, current }: Port): boolean => power <= 0 && current <= 0

/** What takes with a part of what it asks for; what feeds in as it is. */
const scaled = (ports: readonly Port[], share: number): Port[] =>
  ports.map((port) =>
    feeds(port) ? port : { ...port, power: share * port.power, current: share * port.current },
  )

const rounds = 100
const settled = 1e-12

/** A conductance that is negative for what takes constant power: at a lower voltage it takes more current. S. */
const slope = (port: Port, voltages: readonly number[]): number =>
  port.power === 0 ? 0 : -port.power / voltageBetween(voltages, port) ** 2

/** Newton's method. Each step is a linear network in which a port of power P at voltage V is a conductance of −P/V². */
function newton(
  island: OpenIsland,
  elimination: Elimination,
  ports: readonly Port[],
  start: readonly number[],
): number[] | undefined {
  let voltages = [...start]
  let moved = Number.POSITIVE_INFINITY
  for (let round = 0; round < rounds; round++) {
    const reduced = linearised(island, elimination, ports, voltages)
    if (!reduced) return undefined
    const next = corrected(island, reduced, voltages, ports)
    if (!holdsUp(ports, island.voltages, next)) return undefined
    const before = moved
    moved = Math.max(
      0,
      ...ports
        .filter(({ power }) => power !== 0)
        .map((port) => Math.abs(voltageBetween(next, port) / voltageBetween(voltages, port) - 1)),
    )
    voltages = next
    // Rounding ends the progress a little above the limit where the resistances are far apart.
    if (round > 0 && (moved <= settled || (moved < 1e-9 && moved >= before))) return voltages
  }
  return undefined
}

const linearised = (
  island: OpenIsland,
  elimination: Elimination,
  ports: readonly Port[],
  voltages: readonly number[],
): Reduced | undefined =>
  reduce(elimination, [
    ...island.branches.map(({ conductance }) => conductance),
    ...ports.map((port) => slope(port, voltages)),
  ])

/** How near below the limit the network is followed, as a part of what is asked for. */
const nearLimit = 1e-4

/** The voltages at which an island supplies its ports, each of which has a voltage with no load: of the two of each constant power, the upper, found
 * from the voltages with no load. Where loads take and none lifts the voltage of another, Newton's steps fall towards the solution and never pass it
 * (the equations are convex, their derivative an M-matrix); a step that is not stable, or turns a voltage round, so proves that there is none. In any
 * other network all ports rise together from zero as far as they can, and the state they reach is the one given; with taking loads alone a stable
 * state is the only one, for the region of stable voltages is convex and so is the potential on it. Source: monotone Newton theorem, Ortega and
 * Rheinboldt 1970, 13.3; limit for one load E²/4R.
 * @example operatingPoint(openIsland({ nodes: 2, branches: [{ from: 0, to: 1, conductance: 10, emf: 12 }] }),
 * [{ from: 1, to: 0, power: 1000, current: 0 }]).share // ≈ 0.36 */
export function operatingPoint(island: OpenIsland, ports: readonly Port[]): OperatingPoint {
  const elimination = eliminationOf(
    island.nodes,
    [...island.branches, ...ports].map(({ from, to }) => [from, to]),
  )
  const fed = ports.some(feeds) ? newton(island, elimination, scaled(ports, 0), island.voltages) : undefined
  let voltages = fed ?? island.voltages
  let share = 0
  for (let step = 1; step > nearLimit / 2; ) {
    const next = newton(island, elimination, scaled(ports, Math.min(share + step, 1)), voltages)
    if (next) {
      voltages = next
      share += step
      if (share >= 1) return { stable: true, voltages }
    } else step /= 2
  }
  return { stable: false, share, ports: blamed(island, elimination, scaled(ports, share), voltages) }
}

/** Near the limit: ports of constant current whose voltage is gone, else those of constant power that have a good part in what makes the network
 * unstable. There the change ΔV of the voltages has ΔVᵀGΔV = Σ (P/V²) ΔV²; each term is the part of one port. */
function blamed(
  island: OpenIsland,
  elimination: Elimination,
  ports: readonly Port[],
  voltages: readonly number[],
): number[] {
  const all = [...ports.keys()]
  const gone = all.filter((i) => {
    const port = ports[i] as Port
    return Math.abs(voltageBetween(voltages, port) / voltageBetween(island.voltages, port)) < 10 * nearLimit
  })
  const reduced = linearised(island, elimination, ports, voltages)
  if (gone.length > 0) return gone
  if (!reduced) return all
  const flows: Island = { nodes: island.nodes, branches: [] }
  const fed = leftOver(
    flows,
    voltages,
    ports.map((port) => ({
      ...port,
      power: 0,
      current: portCurrent(port, voltageBetween(voltages, port)),
    })),
  )
  const change = voltagesOf(reduced, fed)
  const parts = ports.map((port) => -slope(port, voltages) * voltageBetween(change, port) ** 2)
  const most = Math.max(...parts)
  const found = all.filter((i) => at(parts, i) >= most / 10 && at(parts, i) > 0)
  return found.length > 0 ? found : all
}
